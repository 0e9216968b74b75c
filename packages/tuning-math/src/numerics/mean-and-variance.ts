import { requireSeries } from '../require-series.js';

/** Count, mean and spread of a sample. */
export interface SampleMoments {
  readonly count: number;
  readonly mean: number;
  /** Sample variance with divisor n - 1; null for a single value. */
  readonly variance: number | null;
  /** Square root of the variance; null for a single value. */
  readonly sd: number | null;
}

/**
 * Mean and sample variance in one stable pass.
 *
 * @param values at least one finite value
 * @returns count, mean, variance and standard deviation (null for one value: one pull has no spread)
 * @throws TooFewPointsError, NotFiniteError
 * Source: B. P. Welford, Technometrics 4 (1962) 419-420.
 * @example meanAndVariance([1, 2, 3]) // { count: 3, mean: 2, variance: 1, sd: 1 }
 */
export function meanAndVariance(values: ArrayLike<number>): SampleMoments {
  requireSeries('meanAndVariance', 'values', values);
  const count = values.length;
  let mean = 0;
  let squares = 0;
  for (let index = 0; index < count; index += 1) {
    const value = values[index] ?? 0;
    const fromOldMean = value - mean;
    mean += fromOldMean / (index + 1);
    squares += fromOldMean * (value - mean);
  }
  if (count === 1) return { count, mean, variance: null, sd: null };
  const variance = squares / (count - 1);
  return { count, mean, variance, sd: Math.sqrt(variance) };
}
