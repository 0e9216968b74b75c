import { MOST_PULLS } from './check-duty-request.js';
import { TABLE_POINTS, type CurveLibrary } from './tabulate-curves.js';
import { floorPenalty, floorPriorOf } from './floor-prior.js';
import type { ScaledPulls } from './scaled-pulls.js';
import { sizeMisfit, sizePenalty } from './size-prior.js';
import { LEAST_SPAN, likeliestFloor, tabulatedRise } from './tabulated-rise.js';

/** Reading error of the first, coarse look: wider than the real one, so that no good curve is lost. */
const COARSE_SCATTER = 0.03;
/** Duty error of the first look, %. */
const COARSE_SHIFT = 1;

/** Curve, and how it is moved, whose floor is sought. */
export interface FloorQuestion {
  readonly pulls: ScaledPulls;
  readonly shift: number;
  readonly scale: number;
}

/** Floor (peak at zero duty over target) that brings one library curve nearest to the pulls. */
export function likeliestFloorOf(library: CurveLibrary, row: number, question: FloorQuestion): number {
  const { pulls, shift, scale } = question;
  let square = 0;
  let cross = 0;
  for (let j = 0; j < pulls.count; j += 1) {
    const rise = tabulatedRise(library.rises, row, (pulls.duties[j] as number) - shift) * scale;
    const ratio = pulls.ratios[j] as number;
    const lever = (1 - rise) / (COARSE_SCATTER * ratio * COARSE_SCATTER * ratio);
    square += lever * (1 - rise);
    cross += lever * (ratio - rise);
  }
  return likeliestFloor(square, cross, floorPriorOf(row, pulls.baseRatio));
}

/**
 * Log fit of every library curve to the pulls, each with its likeliest floor; without pulls, what the base says.
 *
 * @param every only every n-th curve is looked at, the others never fit; default 1
 */
export function coarseLogFits(library: CurveLibrary, pulls: ScaledPulls, every = 1): Float64Array {
  const logFits = new Float64Array(library.count).fill(every > 1 ? -Infinity : 0);
  if (pulls.count === 0) return logFits.map((_, row) => priorLogFit(library, row, pulls.baseRatio));
  const looks = Array.from({ length: pulls.count }, (_, j) => lookAt(pulls.duties[j] as number));
  const places = Int32Array.from(looks, ({ place }) => place);
  const parts = Float64Array.from(looks, ({ part }) => part);
  const trusts = pulls.ratios.map((ratio) => 1 / (ratio * ratio));
  for (let row = 0; row < library.count; row += every) {
    const floor = readRow(library.rises, row * TABLE_POINTS, { pulls, places, parts, trusts, row });
    const fit = logFitOf(pulls, floor, sizeMisfit(library, row, floor));
    logFits[row] = floorPenalty(row, floor, pulls.baseRatio) + fit;
  }
  return logFits;
}

/** Log weight of a curve before the first pull. */
export function priorLogFit(library: CurveLibrary, row: number, baseRatio: number | null): number {
  return baseRatio === null ? 0 : sizePenalty(library, row, baseRatio);
}

/** Where in a table row a duty lies: whole duty (not the last) and the part beyond it. */
function lookAt(duty: number): { place: number; part: number } {
  const place = Math.min(Math.max(Math.floor(duty), 0), TABLE_POINTS - 2);
  return { place, part: duty - place };
}

interface RowQuestion {
  readonly pulls: ScaledPulls;
  readonly places: Int32Array;
  readonly parts: Float64Array;
  /** One over each squared ratio. */
  readonly trusts: Float64Array;
  readonly row: number;
}

const rises = new Float64Array(MOST_PULLS);
const slopes = new Float64Array(MOST_PULLS);

/** Fills `rises` and `slopes` at the pulls from one table row and returns its likeliest floor. */
function readRow(
  table: Float32Array,
  start: number,
  { pulls, places, parts, trusts, row }: RowQuestion,
): number {
  let square = 0;
  let cross = 0;
  for (let j = 0; j < pulls.count; j += 1) {
    const at = start + (places[j] as number);
    const low = table[at] as number;
    const slope = (table[at + 1] as number) - low;
    const rise = low + slope * (parts[j] as number);
    rises[j] = rise;
    slopes[j] = slope;
    const lever = (1 - rise) * (trusts[j] as number);
    square += lever * (1 - rise);
    cross += lever * ((pulls.ratios[j] as number) - rise);
  }
  const trust = 1 / (COARSE_SCATTER * COARSE_SCATTER);
  return likeliestFloor(square * trust, cross * trust, floorPriorOf(row, pulls.baseRatio));
}

/**
 * Heavy-tailed (Student t, 4 degrees of freedom) log fit of the row that was read last. The factors are
 * multiplied up and their logarithm taken once in a while, and fractions are kept as such until then, which is what
 * makes this affordable.
 *
 * @param misfitBefore factor of the same power that the curve brings with it
 */
function logFitOf(pulls: ScaledPulls, floor: number, misfitBefore: number): number {
  const span = Math.max(1 - floor, LEAST_SPAN);
  const shiftError = COARSE_SHIFT * span;
  let misfit = misfitBefore;
  let spreads = 1;
  let peaks = 1;
  let logFit = 0;
  for (let j = 0; j < pulls.count; j += 1) {
    const ratio = pulls.ratios[j] as number;
    const fitted = floor + span * (rises[j] as number);
    const error = shiftError * (slopes[j] as number);
    const reading = COARSE_SCATTER * fitted;
    const square = reading * reading + error * error;
    const miss = (ratio - fitted) * fitted;
    const middle = ratio + fitted;
    misfit *= 1 + (miss * miss) / (middle * middle * square);
    spreads *= square;
    peaks *= fitted;
    if (j % 12 === 11) {
      logFit -= 2.5 * Math.log(misfit) + 0.5 * Math.log(spreads / (peaks * peaks));
      misfit = 1;
      spreads = 1;
      peaks = 1;
    }
  }
  return logFit - 2.5 * Math.log(misfit) - 0.5 * Math.log(spreads / (peaks * peaks));
}
