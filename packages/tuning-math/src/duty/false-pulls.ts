import type { PeakPrecision } from './peak-covariance.js';
import { FALSE_HIGH_SHARE, FALSE_LOW_SHARE, FALSE_STRAY } from './response-settings.js';

/** What it changes to take one pull as false (its reading strays far): for each pull at one scatter. */
export interface FalsePullTerms {
  /** Half of what a squared coefficient adds to the log likelihood. */
  readonly gains: Float64Array;
  /** What the wider spread costs, log. */
  readonly costs: Float64Array;
}

const STRAY_SQUARE = FALSE_STRAY * FALSE_STRAY;

/** Rank-one update of the precision for each pull taken as false. Source: Sherman & Morrison, Ann. Math. Stat. 21 (1950). */
export function falsePullTerms({ size, inverse }: PeakPrecision): FalsePullTerms {
  const gains = new Float64Array(size);
  const costs = new Float64Array(size);
  for (let j = 0; j < size; j += 1) {
    const widening = 1 + STRAY_SQUARE * (inverse[j * size + j] ?? 0);
    gains[j] = (0.5 * STRAY_SQUARE) / widening;
    costs[j] = 0.5 * Math.log(widening);
  }
  return { gains, costs };
}

/** Log odds before any reading that a pull is false, low (miss below zero) or high. */
export function falseLogOdds(miss: number): number {
  const share = miss < 0 ? FALSE_LOW_SHARE : FALSE_HIGH_SHARE;
  return Math.log(share / (1 - share));
}
