import type { DepartureModes } from './departure-modes.js';

/** Inverse covariance of the log peaks at one pull-to-pull scatter. */
export interface PeakPrecision {
  readonly size: number;
  /** One over the squared scatter: what a reading would weigh if nothing departed from the curve. */
  readonly trust: number;
  /** How much of that is lost along each mode of the departures. */
  readonly modeLosses: Float64Array;
  /** `size` by `size`, row by row. */
  readonly inverse: Float64Array;
  readonly logDeterminant: number;
}

/**
 * Inverse and log determinant of the pulls' covariance at one scatter, from the modes of their departures.
 *
 * Cost: O(pulls² · modes).
 * Source: Golub & Van Loan, Matrix Computations (2013), section 2.1.4 (Sherman, Morrison & Woodbury).
 */
export function peakPrecision(modes: DepartureModes, scatter: number): PeakPrecision {
  const size = modes.heats.length;
  const noise = scatter * scatter;
  const trust = 1 / noise;
  const modeLosses = modes.variances.map((variance) => trust - 1 / (noise + variance));
  let logDeterminant = (size - modes.count) * Math.log(noise);
  for (const variance of modes.variances) logDeterminant += Math.log(noise + variance);
  return { size, trust, modeLosses, inverse: inverseOf(modes, trust, modeLosses), logDeterminant };
}

function inverseOf(modes: DepartureModes, trust: number, modeLosses: Float64Array): Float64Array {
  const { count, byMode, heats, places } = modes;
  const size = heats.length;
  const width = places.count + 1;
  const inverse = new Float64Array(size * size);
  const shape = new Float64Array(size);
  for (let mode = 0; mode < count; mode += 1) {
    const loss = modeLosses[mode] as number;
    const perHeat = byMode[mode * width + places.count] as number;
    for (let i = 0; i < size; i += 1) {
      const place = places.placeOf[i] as number;
      shape[i] = (byMode[mode * width + place] as number) + perHeat * (heats[i] as number);
      const lost = loss * (shape[i] as number);
      for (let j = 0; j <= i; j += 1)
        inverse[i * size + j] = (inverse[i * size + j] as number) - lost * (shape[j] as number);
    }
  }
  for (let i = 0; i < size; i += 1) {
    for (let j = 0; j < i; j += 1) inverse[j * size + i] = inverse[i * size + j] as number;
    inverse[i * size + i] = (inverse[i * size + i] as number) + trust;
  }
  return inverse;
}
