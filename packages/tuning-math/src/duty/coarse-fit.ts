import { MOST_PULLS } from './check-duty-request.js';
import { doubtedPull } from './doubted-pull.js';
import { TABLE_POINTS, type CurveLibrary } from './tabulate-curves.js';
import { floorPenalty, floorPriorOf, highestFloorPenalty } from './floor-prior.js';
import { MOST_IN_LOT, placedRatios, type PlacedRatios } from './placed-ratios.js';
import type { ScaledPulls } from './scaled-pulls.js';
import { sizePenalty } from './size-prior.js';
import { LEAST_SPAN, likeliestFloor } from './tabulated-rise.js';

/** Reading error of this first look: wider than the real one, so that no good curve is lost. */
export const COARSE_SCATTER = 0.03;
const COARSE_VARIANCE = COARSE_SCATTER * COARSE_SCATTER;
const COARSE_TRUST = 1 / COARSE_VARIANCE;
/** Duty error of the first look, %. */
const COARSE_SHIFT = 1;
/** A curve that fits worse than the best by more than this (log) is given up: no prior of a build makes up for it. */
const GIVEN_UP_LOG = 36;
const SCOUTS_EVERY = 31;

/** What a coarse look finds of each curve. */
export interface CoarseFits {
  /** Log fit to all pulls, without the constant; -Infinity where it is hopeless. */
  readonly logFits: Float64Array;
  /** The part of it that the doubted pull makes; see `doubtedPull`. */
  readonly doubtedLogs: Float64Array;
}

/**
 * Log fit of every library curve to the pulls, each with its likeliest floor; without pulls, what the base says.
 *
 * @param every only every n-th curve is looked at, the others never fit; default 1
 */
export function coarseLogFits(library: CurveLibrary, pulls: ScaledPulls, every = 1): CoarseFits {
  const logFits = new Float64Array(library.count).fill(-Infinity);
  const fits = { logFits, doubtedLogs: new Float64Array(library.count) };
  if (pulls.count === 0) {
    logFits.forEach((_, row) => (logFits[row] = priorLogFit(library, row, pulls.baseRatio)));
    return fits;
  }
  const question = questionOf(pulls);
  // A few from everywhere go first, so that a good one is met soon.
  for (let row = 0; row < library.count; row += every * SCOUTS_EVERY) lookAt(library, row, question, fits);
  for (let row = 0; row < library.count; row += every) {
    if (logFits[row] === -Infinity) lookAt(library, row, question, fits);
  }
  return fits;
}

/** Fits one curve and notes it, unless it is hopeless. */
function lookAt(library: CurveLibrary, row: number, question: RowQuestion, fits: CoarseFits): void {
  const floor = readRow(library.rises, row, question);
  const fit = logFitOf(question, floor);
  if (fit === -Infinity) return;
  const logFit = fit + floorPenalty(row, floor, question.baseRatio) + sizePenalty(library, row, floor);
  fits.logFits[row] = logFit;
  fits.doubtedLogs[row] = doubtedLogOf(question, floor);
  if (logFit <= question.best) return;
  question.best = logFit;
  question.lowest = logFit - GIVEN_UP_LOG - question.highestPenalty;
  question.worst = Math.exp(-2 * question.lowest);
}

/** Log weight of a curve before the first pull. */
export function priorLogFit(library: CurveLibrary, row: number, baseRatio: number | null): number {
  return baseRatio === null ? 0 : sizePenalty(library, row, baseRatio);
}

interface RowQuestion {
  readonly readings: PlacedRatios;
  readonly baseRatio: number | null;
  /** Where in a table row each duty lies: whole duty (not the last) and the part beyond it. */
  readonly whole: Int32Array;
  readonly parts: Float64Array;
  /** The doubted pull: its lot, and its ratio. */
  readonly doubtedLot: number;
  readonly doubtedRatio: number;
  readonly highestPenalty: number;
  /** The best fit so far. */
  best: number;
  /** A fit that cannot come above this (log) is given up, and the same as a misfit (to the fifth power). */
  lowest: number;
  worst: number;
}

function questionOf(pulls: ScaledPulls): RowQuestion {
  const readings = placedRatios(pulls);
  const doubted = doubtedPull(pulls);
  const whole = Int32Array.from(readings.duties, (duty) =>
    Math.min(Math.max(Math.floor(duty), 0), TABLE_POINTS - 2),
  );
  const parts = readings.duties.map((duty, lot) => duty - (whole[lot] as number));
  return {
    readings,
    baseRatio: pulls.baseRatio,
    whole,
    parts,
    doubtedLot: readings.duties.indexOf(pulls.duties[doubted] as number),
    doubtedRatio: pulls.ratios[doubted] as number,
    highestPenalty: highestFloorPenalty(pulls.baseRatio),
    best: -Infinity,
    lowest: -Infinity,
    worst: Infinity,
  };
}

const rises = new Float64Array(MOST_PULLS);
const slopes = new Float64Array(MOST_PULLS);

/** Fills `rises` and `slopes` at the duties from one table row and returns its likeliest floor. */
function readRow(table: Float32Array, row: number, question: RowQuestion): number {
  const { whole, parts, readings } = question;
  const { squareTrusts, trusts } = readings;
  const start = row * TABLE_POINTS;
  let square = 0;
  let cross = 0;
  for (let lot = 0; lot < parts.length; lot += 1) {
    const at = start + (whole[lot] as number);
    const low = table[at] as number;
    const slope = (table[at + 1] as number) - low;
    const rise = low + slope * (parts[lot] as number);
    rises[lot] = rise;
    slopes[lot] = slope;
    const squareTrust = squareTrusts[lot] as number;
    square += (1 - rise) * (1 - rise) * squareTrust;
    cross += (1 - rise) * ((trusts[lot] as number) - rise * squareTrust);
  }
  const prior = floorPriorOf(row, question.baseRatio);
  return likeliestFloor(COARSE_TRUST * square, COARSE_TRUST * cross, prior);
}

/** The part of the fit that the doubted pull makes, of the row that was read last. */
function doubtedLogOf({ doubtedLot, doubtedRatio }: RowQuestion, floor: number): number {
  const span = Math.max(1 - floor, LEAST_SPAN);
  const fitted = floor + span * (rises[doubtedLot] as number);
  const error = COARSE_SHIFT * span * (slopes[doubtedLot] as number);
  const trust = (fitted * fitted) / (COARSE_VARIANCE * fitted * fitted + error * error);
  const miss = (doubtedRatio - fitted) / (doubtedRatio + fitted);
  const misfit = 1 + miss * miss * trust;
  const square = misfit * misfit;
  return 0.5 * Math.log((trust * COARSE_VARIANCE) / (square * square * misfit));
}

/**
 * Heavy-tailed (Student t, 4 degrees of freedom) log fit of the row that was read last; -Infinity once it is seen to
 * be below the lowest of interest. Factors are multiplied up for some readings before a logarithm is taken, which is
 * what makes this affordable.
 */
function logFitOf({ readings, lowest, worst }: RowQuestion, floor: number): number {
  const { ratios, ends } = readings;
  const span = Math.max(1 - floor, LEAST_SPAN);
  let misfit = 1;
  let sharpness = 1;
  let logFit = 0;
  let limit = worst;
  let reading = 0;
  let logged = 0;
  for (let lot = 0; lot < ends.length; lot += 1) {
    const fitted = floor + span * (rises[lot] as number);
    const error = COARSE_SHIFT * span * (slopes[lot] as number);
    const trust = (fitted * fitted) / (COARSE_VARIANCE * fitted * fitted + error * error);
    const end = ends[lot] as number;
    for (; reading < end; reading += 1) {
      const ratio = ratios[reading] as number;
      const miss = (ratio - fitted) / (ratio + fitted);
      misfit *= 1 + miss * miss * trust;
      sharpness *= trust * COARSE_VARIANCE;
    }
    const square = misfit * misfit;
    if (square * square * misfit > limit * sharpness) return -Infinity;
    if (reading - logged < MOST_IN_LOT) continue;
    logFit += 0.5 * Math.log(sharpness) - 2.5 * Math.log(misfit);
    limit = Math.exp(2 * (logFit - lowest));
    misfit = 1;
    sharpness = 1;
    logged = reading;
  }
  return logFit + 0.5 * Math.log(sharpness) - 2.5 * Math.log(misfit);
}
