import { findRoot } from '../numerics/find-root.js';
import type { HoldGoal, HoldPrediction } from './gate-hold-types.js';
import {
  meanOvershoot,
  probabilityMeanOver,
  probabilityPeakOver,
  type HoldPosterior,
} from './overshoot-posterior.js';

const LEVEL = 0.95;

/** What a further pull at a hold will show: range of its peak, chance of passing ceiling and overshoot limit. */
export function predictHold(posterior: HoldPosterior, holdPct: number, goal: HoldGoal): HoldPrediction {
  const peakBelow = (share: number): number => {
    const miss = (levelKpa: number): number => 1 - share - probabilityPeakOver(posterior, holdPct, levelKpa);
    let [low, high] = [posterior.settledKpa * 0.5, posterior.settledKpa * 1.5];
    while (miss(low) > 0) low -= posterior.settledKpa;
    while (miss(high) < 0) high += posterior.settledKpa;
    return findRoot(miss, { low, high, tolerance: 1e-6 * posterior.settledKpa }).x;
  };
  const overshootPct = posterior.curves.reduce(
    (sum, curve) => sum + curve.weight * meanOvershoot(curve, holdPct),
    0,
  );
  return {
    medianKpa: peakBelow(0.5),
    lowKpa: peakBelow(0.5 - LEVEL / 2),
    highKpa: peakBelow(0.5 + LEVEL / 2),
    level: LEVEL,
    probabilityOverCeiling: probabilityPeakOver(posterior, holdPct, goal.ceilingKpa),
    overshootPct,
    probabilityOverLimit: probabilityMeanOver(posterior, holdPct, goal.overshootLimitPct),
  };
}
