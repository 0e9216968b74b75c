import { normalQuantile } from '../numerics/normal-quantile.js';
import { curveLibrary, type CurveLibrary } from './curve-library.js';
import { floorPriorOf, drawnFloor, floorPenalty } from './floor-prior.js';
import { lowDiscrepancyPoint } from './low-discrepancy.js';
import { PARTICLE_COUNT, RISE_SPREAD, SHIFT_SPREAD } from './response-settings.js';
import type { ScaledPulls } from './scaled-pulls.js';
import { likeliestFloor, peakRatio, tabulatedRise } from './tabulated-rise.js';

/** Reading error of the first, coarse look: wider than the real one, so that no good curve is lost. */
const COARSE_SCATTER = 0.022;
/** Duty error of the first look, %. */
const COARSE_SHIFT = 1;

/** Curves of the library, moved a little, that the pulls leave standing. */
export interface Particles {
  readonly count: number;
  readonly library: CurveLibrary;
  readonly rows: Int32Array;
  readonly shifts: Float64Array;
  readonly riseScales: Float64Array;
  readonly floors: Float64Array;
  /** Log of what the fine likelihood is to be multiplied by: prior of the floor over the chance of being drawn. */
  readonly logCorrections: Float64Array;
}

/** Peak over target of one particle at a duty. */
export function particleRatio(particles: Particles, index: number, duty: number): number {
  const rise = tabulatedRise(
    particles.library.rises,
    particles.rows[index] ?? 0,
    duty - (particles.shifts[index] ?? 0),
  );
  return peakRatio(particles.floors[index] ?? 0, rise * (particles.riseScales[index] ?? 1));
}

/**
 * Draws curves in proportion to how well they fit the pulls at a coarse look (systematic resampling), each with
 * a small shift and stretch of its own and the floor that suits the pulls best. Deterministic.
 *
 * @param logPrior log weight of each library curve before this car's pulls; left out: all alike
 */
export function drawParticles(pulls: ScaledPulls, logPrior?: Float64Array): Particles {
  const library = curveLibrary();
  const logFits = coarseLogFits(library, pulls);
  if (logPrior) logFits.forEach((fit, row) => (logFits[row] = fit + (logPrior[row] ?? 0)));
  const rows = resample(logFits, PARTICLE_COUNT);
  const particles: Particles = {
    count: rows.length,
    library,
    rows,
    shifts: moves().shifts,
    riseScales: moves().riseScales,
    floors: new Float64Array(rows.length),
    logCorrections: new Float64Array(rows.length),
  };
  rows.forEach((row, index) => {
    const floor = bestFloor(particles, index, pulls);
    particles.floors[index] = floor;
    const drawn = (logFits[row] ?? 0) - (logPrior?.[row] ?? 0);
    particles.logCorrections[index] = (pulls.count ? floorPenalty(row, floor, pulls.baseRatio) : 0) - drawn;
  });
  return particles;
}

function bestFloor(particles: Particles, index: number, pulls: ScaledPulls): number {
  const row = particles.rows[index] ?? 0;
  if (pulls.count === 0) return drawnFloor(row, index, pulls.baseRatio);
  const scale = particles.riseScales[index] ?? 1;
  const shift = particles.shifts[index] ?? 0;
  let square = 0;
  let cross = 0;
  for (let j = 0; j < pulls.count; j += 1) {
    const rise = tabulatedRise(particles.library.rises, row, (pulls.duties[j] ?? 0) - shift) * scale;
    const ratio = pulls.ratios[j] ?? 1;
    const weight = 1 / (COARSE_SCATTER * ratio) ** 2;
    const lever = 1 - rise;
    square += weight * lever * lever;
    cross += weight * lever * (ratio - rise);
  }
  return likeliestFloor(square, cross, floorPriorOf(row, pulls.baseRatio));
}

function coarseLogFits(library: CurveLibrary, pulls: ScaledPulls): Float64Array {
  const logFits = new Float64Array(library.count);
  if (pulls.count === 0) return logFits;
  const rises = new Float64Array(pulls.count);
  for (let row = 0; row < library.count; row += 1) {
    logFits[row] = coarseLogFit(library, row, pulls, rises);
  }
  return logFits;
}

function coarseLogFit(library: CurveLibrary, row: number, pulls: ScaledPulls, rises: Float64Array): number {
  let square = 0;
  let cross = 0;
  for (let j = 0; j < pulls.count; j += 1) {
    const rise = tabulatedRise(library.rises, row, pulls.duties[j] ?? 0);
    rises[j] = rise;
    const ratio = pulls.ratios[j] ?? 1;
    const weight = 1 / (COARSE_SCATTER * ratio) ** 2;
    square += weight * (1 - rise) * (1 - rise);
    cross += weight * (1 - rise) * (ratio - rise);
  }
  const floor = likeliestFloor(square, cross, floorPriorOf(row, pulls.baseRatio));
  let logFit = floorPenalty(row, floor, pulls.baseRatio);
  for (let j = 0; j < pulls.count; j += 1) {
    const duty = pulls.duties[j] ?? 0;
    const fitted = peakRatio(floor, rises[j] ?? 0);
    const slope = tabulatedRise(library.rises, row, duty + 1) - tabulatedRise(library.rises, row, duty - 1);
    const shiftError = (0.5 * slope * COARSE_SHIFT * (1 - Math.min(floor, 0.88))) / fitted;
    const variance = COARSE_SCATTER * COARSE_SCATTER + shiftError * shiftError;
    const miss = (2 * ((pulls.ratios[j] ?? 1) - fitted)) / ((pulls.ratios[j] ?? 1) + fitted);
    logFit -= 2.5 * Math.log(1 + (miss * miss) / (4 * variance)) + 0.5 * Math.log(variance);
  }
  return logFit;
}

/** Systematic resampling: each row as often as its weight says, to the nearest whole number up or down. */
function resample(logWeights: Float64Array, count: number): Int32Array {
  let highest = -Infinity;
  for (const weight of logWeights) if (weight > highest) highest = weight;
  const weights = logWeights.map((weight) => Math.exp(weight - highest));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const rows = new Int32Array(count);
  let passed = 0;
  let drawn = 0;
  for (let row = 0; row < weights.length && drawn < count; row += 1) {
    passed += weights[row] ?? 0;
    while (drawn < count && (drawn + 0.5) * total < passed * count) {
      rows[drawn] = row;
      drawn += 1;
    }
  }
  return rows.subarray(0, drawn);
}

interface Moves {
  readonly shifts: Float64Array;
  readonly riseScales: Float64Array;
}

let knownMoves: Moves | undefined;

function moves(): Moves {
  knownMoves ??= buildMoves();
  return knownMoves;
}

function buildMoves(): Moves {
  const shifts = new Float64Array(PARTICLE_COUNT);
  const riseScales = new Float64Array(PARTICLE_COUNT);
  for (let index = 0; index < PARTICLE_COUNT; index += 1) {
    const [along = 0.5, up = 0.5] = lowDiscrepancyPoint(index, 2);
    shifts[index] = SHIFT_SPREAD * normalQuantile(Math.max(along, 1e-4));
    riseScales[index] = Math.exp(RISE_SPREAD * normalQuantile(Math.max(up, 1e-4)));
  }
  return { shifts, riseScales };
}
