import { CURVE_FAMILIES, type CurveFamily, type RawRise } from './curve-families.js';
import { lowDiscrepancyPoint } from './low-discrepancy.js';

/** Duties at which every curve is tabulated: 0, 1, ... 100 %. */
export const TABLE_POINTS = 101;

/** Curves in the whole library. */
const CURVE_COUNT = 9_000;
/** The target may lie this far past full duty: cars that cannot reach it. */
const LAST_CROSSING = 116;
const FIRST_CROSSING = 2;
/** Rises are cut here: no car reaches several times its target. */
const HIGHEST_RISE = 4;

/** Rises from 0 (peak at zero duty) to 1 (target), row by row; possible responses before any pull. */
export interface CurveLibrary {
  readonly count: number;
  /** `count` rows of `TABLE_POINTS`. */
  readonly rises: Float32Array;
}

let library: CurveLibrary | undefined;

/** The possible responses, built once at the first call (under 4 MB, some 0.1 s) and kept. */
export function curveLibrary(): CurveLibrary {
  library ??= buildLibrary();
  return library;
}

function buildLibrary(): CurveLibrary {
  const rises = new Float32Array(CURVE_COUNT * TABLE_POINTS);
  let row = 0;
  for (const [family, count] of familyCounts()) {
    for (let index = 0; index < count; index += 1) {
      fillRow(rises.subarray(row * TABLE_POINTS, (row + 1) * TABLE_POINTS), family, index);
      row += 1;
    }
  }
  return { count: row, rises: rises.subarray(0, row * TABLE_POINTS) };
}

function familyCounts(): [CurveFamily, number][] {
  return CURVE_FAMILIES.map((family) => [family, Math.round(family.share * CURVE_COUNT)]);
}

/** Scales one raw rise so that it makes the target at a crossing spread evenly over the duty range. */
function fillRow(row: Float32Array, family: CurveFamily, index: number): void {
  const [crossingShare = 0, ...shape] = lowDiscrepancyPoint(index, family.dimensions + 1);
  const raw = family.draw(shape);
  const foot = raw(0);
  const unit = riseAtCrossing(raw, FIRST_CROSSING + (LAST_CROSSING - FIRST_CROSSING) * crossingShare);
  for (let duty = 0; duty < TABLE_POINTS; duty += 1) {
    row[duty] = Math.min((raw(duty) - foot) / unit, HIGHEST_RISE);
  }
}

/** A crossing inside the dead zone is moved up to where the rise has begun. */
function riseAtCrossing(raw: RawRise, wantedCrossing: number): number {
  const foot = raw(0);
  const whole = raw(LAST_CROSSING) - foot;
  let crossing = wantedCrossing;
  while (raw(crossing) - foot < 0.03 * whole && crossing < LAST_CROSSING) {
    crossing += 0.37 * (LAST_CROSSING - crossing) + 0.5;
  }
  return Math.max(raw(Math.min(crossing, LAST_CROSSING)) - foot, 1e-9);
}
