import { TABLE_POINTS, type CurveLibrary } from './tabulate-curves.js';
import { floorPriorOf, floorPriors } from './floor-prior.js';
import type { ScaledPulls } from './scaled-pulls.js';
import { LEAST_SPAN, likeliestFloor, type FloorPrior } from './tabulated-rise.js';

/** How far cars of one build deviate from its curve: along duty (points) and in level (log). */
export interface Deviation {
  readonly shift: number;
  readonly level: number;
}

/** Deviations that a build can have, all as likely before its cars are known; common practice, no source. */
export const DEVIATIONS: readonly Deviation[] = [
  { shift: 1, level: 0.015 },
  { shift: 2.5, level: 0.03 },
  { shift: 5, level: 0.06 },
];

/** Places at which one car's shift and level are looked at. */
const SHIFTS = [-8, -5, -2.5, -1, 0, 1, 2.5, 5, 8];
const LEVELS = [-0.09, -0.045, -0.015, 0, 0.015, 0.045, 0.09];
/** Reading error, log: scatter and what a table between its curves misses. */
const READING_ERROR = 0.03;
const TRUST = 1 / (READING_ERROR * READING_ERROR);

/**
 * Log likelihood of one car's pulls by every library curve, its shift and level averaged over each of `DEVIATIONS`.
 * Readings are heavy-tailed (Student t, 4 degrees of freedom), so that a false one does not decide.
 *
 * Cost: O(library · pulls · 9 · 7).
 */
export function buildLogFits(library: CurveLibrary, pulls: ScaledPulls): Float64Array[] {
  const fits = DEVIATIONS.map(() => new Float64Array(library.count));
  const places = SHIFTS.map((shift) => pulls.duties.map((duty) => boundedPlace(duty - shift)));
  const priors = floorPriors(pulls.baseRatio);
  const rises = new Float64Array(pulls.count);
  const atPlaces = new Float64Array(SHIFTS.length * LEVELS.length);
  for (let row = 0; row < library.count; row += 1) {
    SHIFTS.forEach((_, shift) => {
      readRises(rises, library.rises.subarray(row * TABLE_POINTS), places[shift] as Float64Array);
      const floor = floorOf(rises, pulls, floorPriorOf(row, priors));
      LEVELS.forEach((level, at) => {
        atPlaces[shift * LEVELS.length + at] = logFitOf(rises, pulls, { floor, factor: Math.exp(level) });
      });
    });
    fits.forEach(
      (fit, deviation) => (fit[row] = averaged(atPlaces, PLACE_SHARES[deviation] as Float64Array)),
    );
  }
  return fits;
}

function boundedPlace(duty: number): number {
  return Math.min(Math.max(duty, 0), TABLE_POINTS - 1.000001);
}

function readRises(rises: Float64Array, table: Float32Array, places: Float64Array): void {
  for (let j = 0; j < rises.length; j += 1) {
    const place = places[j] as number;
    const index = Math.floor(place);
    const low = table[index] as number;
    rises[j] = low + ((table[index + 1] as number) - low) * (place - index);
  }
}

function floorOf(rises: Float64Array, { ratios }: ScaledPulls, prior: FloorPrior): number {
  let square = 0;
  let cross = 0;
  for (let j = 0; j < rises.length; j += 1) {
    const rise = rises[j] as number;
    const ratio = ratios[j] as number;
    const lever = (TRUST * (1 - rise)) / (ratio * ratio);
    square += lever * (1 - rise);
    cross += lever * (ratio - rise);
  }
  return likeliestFloor(square, cross, prior);
}

interface Placed {
  readonly floor: number;
  readonly factor: number;
}

function logFitOf(rises: Float64Array, { ratios }: ScaledPulls, { floor, factor }: Placed): number {
  const span = Math.max(1 - floor, LEAST_SPAN);
  let misfit = 1;
  let logFit = 0;
  for (let j = 0; j < rises.length; j += 1) {
    const fitted = factor * (floor + span * (rises[j] as number));
    const ratio = ratios[j] as number;
    const miss = (2 * (ratio - fitted)) / (ratio + fitted);
    misfit *= 1 + 0.25 * TRUST * miss * miss;
    if (j % 12 === 11) {
      logFit -= 2.5 * Math.log(misfit);
      misfit = 1;
    }
  }
  return logFit - 2.5 * Math.log(misfit);
}

/** Shares of the places for each deviation: normal along both, by the width that each place stands for. */
const PLACE_SHARES: readonly Float64Array[] = DEVIATIONS.map(({ shift, level }) => {
  const along = normalShares(SHIFTS, shift);
  const up = normalShares(LEVELS, level);
  return Float64Array.from(along.flatMap((one) => up.map((other) => one * other)));
});

function normalShares(places: readonly number[], spread: number): number[] {
  const raw = places.map((place, index) => {
    const before = places[index - 1] ?? place;
    const after = places[index + 1] ?? place;
    return ((after - before) / 2) * Math.exp(-0.5 * (place / spread) ** 2);
  });
  const total = raw.reduce((sum, share) => sum + share, 0);
  return raw.map((share) => share / total);
}

/** Log of the mean likelihood over places. */
function averaged(logFits: Float64Array, shares: Float64Array): number {
  let highest = -Infinity;
  for (const logFit of logFits) if (logFit > highest) highest = logFit;
  let sum = 0;
  for (let at = 0; at < logFits.length; at += 1) {
    sum += (shares[at] as number) * Math.exp((logFits[at] as number) - highest);
  }
  return highest + Math.log(Math.max(sum, 1e-300));
}
