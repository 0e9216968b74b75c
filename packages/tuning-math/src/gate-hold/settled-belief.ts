import type { HoldPull } from './gate-hold-types.js';

/** What is believed of the boost that the car settles at, kPa. */
export interface SettledBelief {
  readonly settledKpa: number;
  /** Scatter of a further pull about it, its own uncertainty included. */
  readonly settledScatterKpa: number;
  /** Uncertainty of the mean. */
  readonly settledErrorKpa: number;
  /**
   * Before any pull only the peak is known, from the search of the duty. Settled boost and overshoot without hold share
   * it: what one is higher the other is lower, so that the overshoot's uncertainty does not move the peak.
   */
  readonly isPeakFromDuty: boolean;
}

/** Common practice: boost scatters by about 1 % from pull to pull; worth this many pulls. */
const PRIOR_SCATTER_RATIO = 0.01;
const PRIOR_PULLS = 3;
/** Overshoot without hold; common practice, no source. */
export const TYPICAL_OVERSHOOT_PCT = 2;

/** Mean and scatter of settled boost over the pulls; before any, what makes a peak on the target. */
export function settledBelief(pulls: readonly HoldPull[], targetKpa: number): SettledBelief {
  const count = pulls.length;
  const atTarget = targetKpa / (1 + TYPICAL_OVERSHOOT_PCT / 100);
  const settledKpa = count === 0 ? atTarget : pulls.reduce((sum, pull) => sum + pull.settledKpa, 0) / count;
  const squares = pulls.reduce((sum, pull) => sum + (pull.settledKpa - settledKpa) ** 2, 0);
  const prior = PRIOR_PULLS * (PRIOR_SCATTER_RATIO * targetKpa) ** 2;
  const variance = (prior + squares) / (PRIOR_PULLS + Math.max(0, count - 1));
  const settledErrorKpa = Math.sqrt(variance / Math.max(1, count));
  const settledScatterKpa = Math.hypot(Math.sqrt(variance), settledErrorKpa);
  return { settledKpa, settledErrorKpa, settledScatterKpa, isPeakFromDuty: count === 0 };
}
