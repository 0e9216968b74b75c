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

/** What is known of a curve's floor (peak at zero duty over target) before any pull. */
export function floorPriorOf(row: number, baseRatio: number | null): FloorPrior {
  if (baseRatio === null) return { centre: UNKNOWN_FLOOR, spread: UNKNOWN_FLOOR_SPREAD };
  if (row % WIDE_FLOOR_EVERY !== 0) return { centre: baseRatio, spread: BASE_SPREAD * baseRatio };
  return { centre: baseRatio + CREEP_LIFT, spread: CREEP_SPREAD };
}

/** Log prior density of a floor, without the constant. */
export function floorPenalty(row: number, floor: number, baseRatio: number | null): number {
  const { centre, spread } = floorPriorOf(row, baseRatio);
  const away = (floor - centre) / spread;
  return -0.5 * away * away - Math.log(spread);
}

/** The most that `floorPenalty` is for any curve and floor. */
export function highestFloorPenalty(baseRatio: number | null): number {
  return Math.max(...[0, 1].map((row) => floorPenalty(row, floorPriorOf(row, baseRatio).centre, baseRatio)));
}

/** A floor drawn from its prior for the particle with this index, for the time before the first pull. */
export function drawnFloor(row: number, index: number, baseRatio: number | null): number {
  const { centre, spread } = floorPriorOf(row, baseRatio);
  const [share = 0.5] = lowDiscrepancyPoint(index, 1);
  return Math.max(centre + spread * normalQuantile(Math.max(share, 1e-4)), 0.02);
}
