import { MOST_PULLS } from './check-duty-request.js';
import { doubtedPull } from './doubted-pull.js';
import { TABLE_POINTS, type CurveLibrary } from './tabulate-curves.js';
import { floorPenalty, floorPriorOf, floorPriors, type FloorPriors } from './floor-prior.js';
import { MOST_IN_LOT, placedRatios, type PlacedRatios } from './placed-ratios.js';
import type { ScaledPulls } from './scaled-pulls.js';
import { sizePenalty } from './size-prior.js';
import { LEAST_SPAN, likeliestFloor, type FloorPrior } from './tabulated-rise.js';

/** Reading error of this first look: wider than the real one, so that no good curve is lost. */
export const COARSE_SCATTER = 0.03;
const COARSE_VARIANCE = COARSE_SCATTER * COARSE_SCATTER;
const COARSE_TRUST = 1 / COARSE_VARIANCE;
/** Duty error of the first look, %. */
const COARSE_SHIFT = 1;
/** A curve that fits worse than the best by more than this (log) is given up. */
const GIVEN_UP_BELOW = 20;
const SCOUTS_EVERY = 155;

/** What a coarse look finds of the curves that are not hopeless. */
export interface CoarseFits {
  /** Their rows in the library, in its order. */
  readonly rows: Int32Array;
  /** Log fit of each to all pulls, without the constant. */
  readonly logFits: Float64Array;
  /** The part of it that the doubted pull makes; see `doubtedPull`. */
  readonly doubtedLogs: Float64Array;
}

/** Which curves need not be fitted. */
export interface CoarseOptions {
  /** So many of every five curves are looked at, the others never fit; default 5. */
  readonly ofFive?: number | undefined;
  /** A curve that fits worse than the best by more than this (log) is given up; default 20. */
  readonly givenUpBelow?: number | undefined;
}

/** Log fit of every library curve to the pulls, each with its likeliest floor; without pulls, what the base says. */
export function coarseLogFits(
  library: CurveLibrary,
  pulls: ScaledPulls,
  { ofFive = 5, givenUpBelow = GIVEN_UP_BELOW }: CoarseOptions = {},
): CoarseFits {
  if (pulls.count === 0) return priorFits(library, pulls.baseRatio);
  const question = questionOf(pulls, givenUpBelow);
  // A few from everywhere go first, so that what a good fit is becomes known soon.
  for (let row = 0; row < library.count; row += SCOUTS_EVERY) lookAt(library, row, question);
  const found: Found = { rows: [], logFits: [], doubtedLogs: [] };
  for (let row = 0; row < library.count; row += 1) {
    if (row % 5 >= ofFive) continue;
    const logFit = lookAt(library, row, question);
    if (logFit === -Infinity) continue;
    found.rows.push(row);
    found.logFits.push(logFit);
    found.doubtedLogs.push(doubtedLogOf(question));
  }
  return {
    rows: Int32Array.from(found.rows),
    logFits: Float64Array.from(found.logFits),
    doubtedLogs: Float64Array.from(found.doubtedLogs),
  };
}

interface Found {
  readonly rows: number[];
  readonly logFits: number[];
  readonly doubtedLogs: number[];
}

function priorFits(library: CurveLibrary, baseRatio: number | null): CoarseFits {
  const rows = Int32Array.from({ length: library.count }, (_, row) => row);
  const logFits = Float64Array.from(rows, (row) => priorLogFit(library, row, baseRatio));
  return { rows, logFits, doubtedLogs: new Float64Array(library.count) };
}

/** Log fit of one curve, -Infinity where it is hopeless. The question keeps its floor. */
function lookAt(library: CurveLibrary, row: number, question: RowQuestion): number {
  const prior = floorPriorOf(row, question.priors);
  const floor = readRow(library.rises, row, question, prior);
  question.floor = floor;
  const floorLog = floorPenalty(prior, floor);
  const fit = logFitOf(question, floor, question.best - question.givenUpBelow - floorLog);
  if (fit === -Infinity) return fit;
  const logFit = fit + (floorLog + sizePenalty(library, row, floor));
  if (logFit > question.best) question.best = logFit;
  return logFit < question.best - question.givenUpBelow ? -Infinity : logFit;
}

/** Log weight of a curve before the first pull. */
export function priorLogFit(library: CurveLibrary, row: number, baseRatio: number | null): number {
  return baseRatio === null ? 0 : sizePenalty(library, row, baseRatio);
}

interface RowQuestion {
  readonly readings: PlacedRatios;
  readonly priors: FloorPriors;
  readonly givenUpBelow: number;
  /** Where in a table row each duty lies: whole duty (not the last) and the part beyond it. */
  readonly whole: Int32Array;
  readonly parts: Float64Array;
  /** The doubted pull: its lot, and its ratio. */
  readonly doubtedLot: number;
  readonly doubtedRatio: number;
  /** The best fit so far. */
  best: number;
  /** Floor of the row that was read last. */
  floor: number;
}

function questionOf(pulls: ScaledPulls, givenUpBelow: number): RowQuestion {
  const readings = placedRatios(pulls);
  const doubted = doubtedPull(pulls);
  const whole = Int32Array.from(readings.duties, (duty) =>
    Math.min(Math.max(Math.floor(duty), 0), TABLE_POINTS - 2),
  );
  const parts = readings.duties.map((duty, lot) => duty - (whole[lot] as number));
  return {
    readings,
    priors: floorPriors(pulls.baseRatio),
    givenUpBelow,
    whole,
    parts,
    doubtedLot: readings.duties.indexOf(pulls.duties[doubted] as number),
    doubtedRatio: pulls.ratios[doubted] as number,
    best: -Infinity,
    floor: 0,
  };
}

const rises = new Float64Array(MOST_PULLS);
const slopes = new Float64Array(MOST_PULLS);

/** Fills `rises` and `slopes` at the duties from one table row and returns its likeliest floor. */
function readRow(
  table: Float32Array,
  row: number,
  { whole, parts, readings }: RowQuestion,
  prior: FloorPrior,
): number {
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
  return likeliestFloor(COARSE_TRUST * square, COARSE_TRUST * cross, prior);
}

/** The part of the fit that the doubted pull makes, of the row that was read last. */
function doubtedLogOf({ doubtedLot, doubtedRatio, floor }: RowQuestion): number {
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
function logFitOf({ readings }: RowQuestion, floor: number, lowest: number): number {
  const { ratios, ends } = readings;
  const span = Math.max(1 - floor, LEAST_SPAN);
  let misfit = 1;
  let sharpness = 1;
  let logFit = 0;
  // The fit itself is below the lowest where its misfit, to the fifth power, is above this share of its sharpness.
  let limit = Math.exp(-2 * lowest);
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
