import type { DepartureModes } from './departure-modes.js';
import { matrixTimes } from './matrix-times.js';

/** Distances of the readings from each curve, and what of them lies along each mode of the departures. */
export interface ProjectedMisses {
  readonly modes: DepartureModes;
  /** A row for each curve, as long as there are pulls: log reading less log curve. */
  readonly misses: Float64Array;
  /** Sum of squares of each row. */
  readonly squares: Float64Array;
  /** A row of `modes.count` for each curve. */
  readonly alongModes: Float64Array;
}

/** Projects the misses on the modes, once for all scatters. O(curves · (pulls + places · modes)). */
export function projectMisses(misses: Float64Array, curves: number, modes: DepartureModes): ProjectedMisses {
  const { count, heats, byMode } = modes;
  const { placeOf, count: placeCount } = modes.places;
  const size = heats.length;
  const squares = new Float64Array(curves);
  const alongModes = new Float64Array(curves * count);
  const along = new Float64Array(count);
  const sums = new Float64Array(placeCount + 1);
  for (let curve = 0; curve < curves; curve += 1) {
    let square = 0;
    let perHeat = 0;
    sums.fill(0);
    for (let pull = 0; pull < size; pull += 1) {
      const miss = misses[curve * size + pull] as number;
      const place = placeOf[pull] as number;
      square += miss * miss;
      sums[place] = (sums[place] as number) + miss;
      perHeat += miss * (heats[pull] as number);
    }
    sums[placeCount] = perHeat;
    squares[curve] = square;
    matrixTimes(byMode, sums, 0, along);
    alongModes.set(along, curve * count);
  }
  return { modes, misses, squares, alongModes };
}
