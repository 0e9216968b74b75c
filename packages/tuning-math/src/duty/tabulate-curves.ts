import { OutOfRangeError } from '../errors.js';

/** Duties at which every curve is tabulated: 0, 1, ... 100 %. */
export const TABLE_POINTS = 101;
/** Rises are cut here: no car reaches several times its target. */
const HIGHEST_RISE = 4;
/** Duty over which the steepest rise is taken, %. */
const STEEP_OVER = 5;
/** What a curve that never rises counts as: its logarithm is asked for. */
const LEAST_WHOLE = 1e-3;
const LEAST_STEEPEST = 1e-5;

/** Rises from 0 (peak at zero duty) to 1 (target), row by row; possible responses before any pull. */
export interface CurveLibrary {
  readonly count: number;
  /** `count` rows of `TABLE_POINTS`. */
  readonly rises: Float32Array;
  /** Log of each whole rise, to full duty. */
  readonly logWholes: Float64Array;
  /** Log of each steepest rise over five points of duty, per point. */
  readonly logSteepest: Float64Array;
}

/**
 * Lays possible responses out in tables.
 *
 * @param scaled for each its rise at 0, 1, ... 100 % duty: 0 at zero duty, 1 where it makes the target, never falling;
 *   one that does not reach its target in the range ends below 1
 * @throws {OutOfRangeError} a curve that has not a rise for each of these duties
 * Cost: O(curves · 101).
 */
export function tabulateCurves(scaled: readonly Float64Array[]): CurveLibrary {
  const count = scaled.length;
  const rises = new Float32Array(count * TABLE_POINTS);
  scaled.forEach((curve, row) => {
    if (curve.length !== TABLE_POINTS) refuse(row, curve.length);
    curve.forEach((rise, duty) => (rises[row * TABLE_POINTS + duty] = Math.min(rise, HIGHEST_RISE)));
  });
  return {
    count,
    rises,
    logWholes: Float64Array.from(scaled, (curve) => Math.log(Math.max(curve.at(-1) ?? 0, LEAST_WHOLE))),
    logSteepest: Float64Array.from(scaled, (curve) => Math.log(steepestOf(curve))),
  };
}

function refuse(row: number, length: number): never {
  throw new OutOfRangeError('tabulateCurves', {
    argument: `scaled[${row}].length`,
    value: length,
    allowed: String(TABLE_POINTS),
  });
}

function steepestOf(curve: Float64Array): number {
  let steepest = LEAST_STEEPEST;
  for (let duty = STEEP_OVER; duty < TABLE_POINTS; duty += 1) {
    const slope = ((curve[duty] as number) - (curve[duty - STEEP_OVER] as number)) / STEEP_OVER;
    if (slope > steepest) steepest = slope;
  }
  return steepest;
}
