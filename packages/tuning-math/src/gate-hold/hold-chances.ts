import { normalShareBelow } from '../duty/normal-table.js';
import type { HoldGoal } from './gate-hold-types.js';
import { curveOver, peakMixture } from './peak-mixture.js';
import type { HoldPosterior } from './overshoot-posterior.js';

/** What a further pull at a hold has to be judged by. */
export interface HoldChances {
  /** Mean overshoot expected, %. */
  readonly overshootPct: number;
  /** Chance that the peak passes the ceiling. */
  readonly overCeiling: number;
  /** Chance that the true mean overshoot is over its limit. */
  readonly overLimit: number;
  /** Share of the belief for which this hold is too high: mean over the limit, or ceiling passed too often. */
  readonly tooHigh: number;
}

/** Chances of a pull at a hold over the whole belief. */
export function holdChances(
  posterior: HoldPosterior,
  holdPct: number,
  goal: HoldGoal,
  riskLimit: number,
): HoldChances {
  const mixture = peakMixture(posterior, holdPct);
  let [meanPct, overCeiling, overLimit, tooHigh] = [0, 0, 0, 0];
  for (let curve = 0; curve < posterior.weight.length; curve += 1) {
    const weight = posterior.weight[curve] ?? 0;
    const overshootPct = mixture.overshootPct[curve] ?? 0;
    const past = curveOver(mixture, curve, goal.ceilingKpa);
    const aside = (overshootPct - goal.overshootLimitPct) / Math.sqrt(posterior.baseVariance[curve] ?? 1);
    meanPct += weight * overshootPct;
    overCeiling += weight * past;
    overLimit += weight * normalShareBelow(aside);
    if (aside > 0 || past > riskLimit) tooHigh += weight;
  }
  return { overshootPct: meanPct, overCeiling, overLimit, tooHigh };
}
