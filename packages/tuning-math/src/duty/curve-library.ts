import { CURVE_FAMILIES, type CurveFamily, type RawRise } from './curve-families.js';
import { lowDiscrepancyPoint } from './low-discrepancy.js';

/** Duties at which every curve is tabulated: 0, 1, ... 100 %. */
export const TABLE_POINTS = 101;

/** Curves in the whole library. */
const CURVE_COUNT = 9_000;
/** The target may lie this far past full duty: cars that cannot reach it. */
const LAST_CROSSING = 116;
/** Nobody sets a target that the first points of duty make. */
const FIRST_CROSSING = 7;
/** Rises are cut here: no car reaches several times its target. */
const HIGHEST_RISE = 4;

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

let library: CurveLibrary | undefined;

/** The possible responses, built once at the first call (under 4 MB, some 0.1 s) and kept. */
export function curveLibrary(): CurveLibrary {
  library ??= buildLibrary();
  return library;
}

function buildLibrary(): CurveLibrary {
  const counts = familyCounts();
  const count = counts.reduce((sum, [, ofFamily]) => sum + ofFamily, 0);
  const built = {
    count,
    rises: new Float32Array(count * TABLE_POINTS),
    logWholes: new Float64Array(count),
    logSteepest: new Float64Array(count),
  };
  let row = 0;
  for (const [family, ofFamily] of counts) {
    for (let index = 0; index < ofFamily; index += 1) {
      fillRow(built, row, scaledRises(family, index));
      row += 1;
    }
  }
  return built;
}

function familyCounts(): [CurveFamily, number][] {
  return CURVE_FAMILIES.map((family) => [family, Math.round(family.share * CURVE_COUNT)]);
}

/** One rise at each duty, scaled so that it makes the target at a crossing spread evenly over the duty range. */
function scaledRises(family: CurveFamily, index: number): Float64Array {
  const [crossingShare = 0, ...shape] = lowDiscrepancyPoint(index, family.dimensions + 1);
  const raw = family.draw(shape);
  const foot = raw(0);
  const unit = riseAtCrossing(raw, FIRST_CROSSING + (LAST_CROSSING - FIRST_CROSSING) * crossingShare);
  return Float64Array.from({ length: TABLE_POINTS }, (_, duty) => (raw(duty) - foot) / unit);
}

/** Duty over which the steepest rise is taken, %. */
const STEEP_OVER = 5;

function fillRow(built: CurveLibrary, row: number, scaled: Float64Array): void {
  scaled.forEach((rise, duty) => (built.rises[row * TABLE_POINTS + duty] = Math.min(rise, HIGHEST_RISE)));
  let steepest = 1e-5;
  for (let duty = STEEP_OVER; duty < TABLE_POINTS; duty += 1) {
    const slope = ((scaled[duty] as number) - (scaled[duty - STEEP_OVER] as number)) / STEEP_OVER;
    if (slope > steepest) steepest = slope;
  }
  built.logWholes[row] = Math.log(Math.max(scaled[TABLE_POINTS - 1] as number, 1e-3));
  built.logSteepest[row] = Math.log(steepest);
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
