import { CURVE_FAMILIES, type CurveFamily, type RawRise } from './curve-families.js';
import { lowDiscrepancyPoint } from './low-discrepancy.js';
import { tabulateCurves, TABLE_POINTS, type CurveLibrary } from './tabulate-curves.js';

/** Curves in the whole library. */
const CURVE_COUNT = 9_000;
/** A raw rise is known so far, for scaling it by a duty that it may only reach past the range. */
const LAST_CROSSING = 116;
/** Share of the curves that fall short of the target at full duty, and how much of the rise to it the shortest make. */
const SHORT_SHARE = 0.14;
const SHORTEST = 0.45;
/** The others make the target at full duty or before. */
const LAST_MADE = 101;
/** Nobody sets a target that the first points of duty make. */
const FIRST_CROSSING = 7;
let library: CurveLibrary | undefined;

/** The possible responses, built once at the first call (under 4 MB, some 0.1 s) and kept. */
export function curveLibrary(): CurveLibrary {
  library ??= buildLibrary();
  return library;
}

function buildLibrary(): CurveLibrary {
  return tabulateCurves(
    familyCounts().flatMap(([family, ofFamily]) =>
      Array.from({ length: ofFamily }, (_, index) => scaledRises(family, index)),
    ),
  );
}

function familyCounts(): [CurveFamily, number][] {
  return CURVE_FAMILIES.map((family) => [family, Math.round(family.share * CURVE_COUNT)]);
}

/**
 * One rise at each duty, scaled so that it makes the target at a crossing spread evenly over the duty range, or falls
 * short of it at full duty by a share spread evenly.
 */
function scaledRises(family: CurveFamily, index: number): Float64Array {
  const [sizeShare = 0, ...shape] = lowDiscrepancyPoint(index, family.dimensions + 1);
  const raw = family.draw(shape);
  const foot = raw(0);
  const unit = unitOf(raw, sizeShare);
  return Float64Array.from({ length: TABLE_POINTS }, (_, duty) => (raw(duty) - foot) / unit);
}

/** The raw rise that makes the target. */
function unitOf(raw: RawRise, sizeShare: number): number {
  const made = sizeShare / (1 - SHORT_SHARE);
  if (made < 1) return riseAtCrossing(raw, FIRST_CROSSING + (LAST_MADE - FIRST_CROSSING) * made);
  const short = (sizeShare - (1 - SHORT_SHARE)) / SHORT_SHARE;
  return Math.max(raw(100) - raw(0), 1e-9) / (SHORTEST + (1 - SHORTEST) * short);
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
