import { TABLE_POINTS } from './tabulate-curves.js';

/** Rise of one tabulated curve at any duty from 0 to 100, straight between whole duties. */
export function tabulatedRise(rises: Float32Array, row: number, duty: number): number {
  const bounded = duty <= 0 ? 0 : duty >= TABLE_POINTS - 1 ? TABLE_POINTS - 1.000001 : duty;
  const index = Math.floor(bounded);
  const offset = row * TABLE_POINTS + index;
  const low = rises[offset] as number;
  return low + ((rises[offset + 1] as number) - low) * (bounded - index);
}

/** Smallest rise from floor to target that a curve is given, in units of the target. */
export const LEAST_SPAN = 0.12;

/** Peak over target of a curve with this floor (peak at zero duty over target) and rise. */
export function peakRatio(floor: number, rise: number): number {
  return floor + Math.max(1 - floor, LEAST_SPAN) * rise;
}

/** A normal: what is known of a floor (peak at zero duty over target) before any pull. */
export interface FloorPrior {
  readonly centre: number;
  readonly spread: number;
  readonly logSpread: number;
}

/** Most likely floor given sums over pulls: `square` of weight·(1-rise)², `cross` of weight·(1-rise)·(ratio-rise). */
export function likeliestFloor(square: number, cross: number, prior: FloorPrior): number {
  const trust = 1 / (prior.spread * prior.spread);
  return Math.max((cross + prior.centre * trust) / (square + trust), 0.02);
}
