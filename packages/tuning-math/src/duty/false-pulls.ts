import type { PeakPrecision } from './peak-precision.js';
import { FALSE_HIGH_SHARE, FALSE_LOW_SHARE, FALSE_STRAY } from './response-settings.js';

/** What it changes to take one pull as false (its reading strays far): for each pull at one scatter. */
export interface FalsePullTerms {
  /** Half of what a squared coefficient adds to the log likelihood. */
  readonly gains: Float64Array;
  /** What it costs, log, where the reading is too low and where it is too high. */
  readonly lowCosts: Float64Array;
  readonly highCosts: Float64Array;
  readonly mostGain: number;
  readonly leastCost: number;
}

const STRAY_SQUARE = FALSE_STRAY * FALSE_STRAY;
const LOW_COST = -Math.log(FALSE_LOW_SHARE / (1 - FALSE_LOW_SHARE));
const HIGH_COST = -Math.log(FALSE_HIGH_SHARE / (1 - FALSE_HIGH_SHARE));

/**
 * Rank-one update of the precision for each pull taken as false; pulls that are surely false already gain nothing.
 * Source: Sherman & Morrison, Ann. Math. Stat. 21 (1950).
 */
export function falsePullTerms(
  { size, inverse }: PeakPrecision,
  surelyFalse: ReadonlySet<number>,
): FalsePullTerms {
  const gains = new Float64Array(size);
  const lowCosts = new Float64Array(size).fill(Infinity);
  const highCosts = new Float64Array(size).fill(Infinity);
  for (let j = 0; j < size; j += 1) {
    if (surelyFalse.has(j)) continue;
    const widening = 1 + STRAY_SQUARE * (inverse[j * size + j] as number);
    gains[j] = (0.5 * STRAY_SQUARE) / widening;
    lowCosts[j] = LOW_COST + 0.5 * Math.log(widening);
    highCosts[j] = HIGH_COST + 0.5 * Math.log(widening);
  }
  const leastCost = lowCosts.reduce((least, cost) => Math.min(least, cost), Infinity);
  const mostGain = gains.reduce((most, gain) => Math.max(most, gain), 0);
  return { gains, lowCosts, highCosts, mostGain, leastCost };
}
