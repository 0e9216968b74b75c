import { normalQuantile } from '../numerics/normal-quantile.js';
import { lowDiscrepancyPoint } from './low-discrepancy.js';
import {
  BASE_SPREAD,
  CREEP_LIFT,
  CREEP_SPREAD,
  UNKNOWN_FLOOR,
  UNKNOWN_FLOOR_SPREAD,
  WIDE_FLOOR_EVERY,
} from './response-settings.js';
import type { FloorPrior } from './tabulated-rise.js';

/** What is known of floors before any pull: of most curves, and of those whose floor may lie far from the base boost. */
export interface FloorPriors {
  readonly usual: FloorPrior;
  readonly wide: FloorPrior;
}

/** Worked out once for many curves. */
export function floorPriors(baseRatio: number | null): FloorPriors {
  if (baseRatio === null) {
    const unknown = normal(UNKNOWN_FLOOR, UNKNOWN_FLOOR_SPREAD);
    return { usual: unknown, wide: unknown };
  }
  return {
    usual: normal(baseRatio, BASE_SPREAD * baseRatio),
    wide: normal(baseRatio + CREEP_LIFT, CREEP_SPREAD),
  };
}

function normal(centre: number, spread: number): FloorPrior {
  return { centre, spread, logSpread: Math.log(spread) };
}

/** What is known of the floor (peak at zero duty over target) of the curve in this row. */
export function floorPriorOf(row: number, { usual, wide }: FloorPriors): FloorPrior {
  return row % WIDE_FLOOR_EVERY === 0 ? wide : usual;
}

/** Log prior density of a floor, without the constant. */
export function floorPenalty({ centre, spread, logSpread }: FloorPrior, floor: number): number {
  const away = (floor - centre) / spread;
  return -0.5 * away * away - logSpread;
}

/** A floor drawn from its prior for the particle with this index, for the time before the first pull. */
export function drawnFloor({ centre, spread }: FloorPrior, index: number): number {
  const [share = 0.5] = lowDiscrepancyPoint(index, 1);
  return Math.max(centre + spread * normalQuantile(Math.max(share, 1e-4)), 0.02);
}
