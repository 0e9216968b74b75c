import { findRoot } from '../numerics/find-root.js';
import type { HoldPrediction } from './gate-hold-types.js';
import type { HoldChances } from './hold-chances.js';
import { mixtureOver, peakMixture } from './peak-mixture.js';
import type { HoldPosterior } from './overshoot-posterior.js';

const LEVEL = 0.95;
/** Ends of the predicted range are found to this share of settled boost. */
const END_RATIO = 2e-4;

/** What a further pull at a hold will show: range of its peak, chance of passing ceiling and overshoot limit. */
export function predictHold(posterior: HoldPosterior, holdPct: number, chances: HoldChances): HoldPrediction {
  const mixture = peakMixture(posterior, holdPct);
  const peakBelow = (share: number): number => {
    const miss = (levelKpa: number): number => 1 - share - mixtureOver(mixture, levelKpa);
    let [low, high] = [posterior.settledKpa * 0.9, posterior.settledKpa * 1.1];
    while (miss(low) > 0) low -= 0.2 * posterior.settledKpa;
    while (miss(high) < 0) high += 0.2 * posterior.settledKpa;
    return findRoot(miss, { low, high, tolerance: END_RATIO * posterior.settledKpa }).x;
  };
  return {
    medianKpa: peakBelow(0.5),
    lowKpa: peakBelow(0.5 - LEVEL / 2),
    highKpa: peakBelow(0.5 + LEVEL / 2),
    level: LEVEL,
    probabilityOverCeiling: chances.overCeiling,
    overshootPct: chances.overshootPct,
    probabilityOverLimit: chances.overLimit,
  };
}
