import { pullPlaces } from './pull-places.js';
import type { ScaledPulls } from './scaled-pulls.js';

/** Most ratios in a lot; factors of so many can be multiplied up without leaving the range of numbers. */
export const MOST_IN_LOT = 12;

/** Peaks over target in lots of one duty: a curve is read once for all pulls of a lot. */
export interface PlacedRatios {
  /** Duty of each lot, %. */
  readonly duties: Float64Array;
  /** Ratios of the first lot, then those of the second and so on. */
  readonly ratios: Float64Array;
  /** Where the ratios of each lot end. */
  readonly ends: Int32Array;
  /** Sums over each lot of one over the squared ratio, and of one over the ratio. */
  readonly squareTrusts: Float64Array;
  readonly trusts: Float64Array;
}

/**
 * Gathers the peaks of a car's pulls by duty, the duty that came last first: most curves are told apart where the pulls
 * are close to the target. O(pulls · duties).
 */
export function placedRatios(pulls: ScaledPulls): PlacedRatios {
  const { count, duties, placeOf } = pullPlaces(pulls);
  const lots: Lot[] = [];
  for (let place = 0; place < count; place += 1) {
    const ratios = pulls.ratios.filter((_, pull) => placeOf[pull] === place);
    for (let from = 0; from < ratios.length; from += MOST_IN_LOT)
      lots.push({ duty: duties[place] as number, ratios: [...ratios.subarray(from, from + MOST_IN_LOT)] });
  }
  lots.reverse();
  let end = 0;
  return {
    duties: Float64Array.from(lots, ({ duty }) => duty),
    ratios: Float64Array.from(lots.flatMap(({ ratios }) => ratios)),
    ends: Int32Array.from(lots, ({ ratios }) => (end += ratios.length)),
    squareTrusts: Float64Array.from(lots, ({ ratios }) => sumOf(ratios, (ratio) => 1 / ratio ** 2)),
    trusts: Float64Array.from(lots, ({ ratios }) => sumOf(ratios, (ratio) => 1 / ratio)),
  };
}

interface Lot {
  readonly duty: number;
  readonly ratios: readonly number[];
}

function sumOf(ratios: readonly number[], of: (ratio: number) => number): number {
  return ratios.reduce((sum, ratio) => sum + of(ratio), 0);
}
