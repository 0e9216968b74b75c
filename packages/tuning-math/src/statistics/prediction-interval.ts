import { meanAndVariance } from '../numerics/mean-and-variance.js';
import { studentTQuantile } from '../numerics/student-t-quantile.js';
import { requireNumber } from '../require-number.js';
import { requireSeries } from '../require-series.js';

/** Where the next value will lie. */
export interface PredictionInterval {
  readonly low: number;
  readonly high: number;
  readonly mean: number;
  readonly level: number;
}

/**
 * Interval that holds one new value with the probability asked for. Narrower than a tolerance interval:
 * it speaks of the next pull only, not of all to come.
 *
 * @param values at least 2 finite values
 * @param level above 0 and below 1, such as 0.95
 * @throws TooFewPointsError, NotFiniteError, OutOfRangeError
 * Source: mean ± t·s·√(1 + 1/n), Student t with n - 1 degrees of freedom (Hahn & Meeker, Statistical
 * Intervals, section 4.7).
 */
export function predictionInterval(values: ArrayLike<number>, level: number): PredictionInterval {
  requireSeries('predictionInterval', 'values', values, 2);
  requireNumber('predictionInterval', 'level', level, { min: 0, max: 1, exclusive: true });
  const { count, mean, sd } = meanAndVariance(values);
  const reach = studentTQuantile(0.5 + level / 2, count - 1) * (sd ?? 0) * Math.sqrt(1 + 1 / count);
  return { low: mean - reach, high: mean + reach, mean, level };
}
