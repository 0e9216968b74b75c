import type { DepartureModes } from './departure-modes.js';

/** Where the sums of one curve are worked out, made once for all curves. */
export interface CoefficientRoom {
  readonly lost: Float64Array;
  readonly atPlaces: Float64Array;
  /** A figure for each pull. */
  readonly coefficients: Float64Array;
}

/** Room for curves and pulls of these modes. */
export function coefficientRoom({ count, places, heats }: DepartureModes): CoefficientRoom {
  return {
    lost: new Float64Array(count),
    atPlaces: new Float64Array(places.count + 1),
    coefficients: new Float64Array(heats.length),
  };
}
