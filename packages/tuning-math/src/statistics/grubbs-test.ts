import { meanAndVariance } from '../numerics/mean-and-variance.js';
import { studentTQuantile } from '../numerics/student-t-quantile.js';
import { requireNumber } from '../require-number.js';
import { requireSeries } from '../require-series.js';

/** How the test is to be run. */
export interface GrubbsOptions {
  /** Chance of calling a sound set an outlier's, such as 0.05. */
  readonly significance: number;
  /** `two` asks after either end, `upper` and `lower` after one that was named beforehand. */
  readonly sides: 'two' | 'upper' | 'lower';
}

/** Whether the most distant value belongs to the others. */
export interface GrubbsResult {
  /** Distance of the suspect from the mean, in standard deviations. */
  readonly statistic: number;
  readonly criticalValue: number;
  readonly isOutlier: boolean;
  /** Place of the suspect in the list. */
  readonly suspectIndex: number;
}

/**
 * Grubbs' test for one outlier in normal data. A pull that it finds is to be looked into, not to be dropped
 * unseen.
 *
 * @param values at least 3 finite values
 * @returns statistic and critical value; equal values have no outlier
 * @throws TooFewPointsError, NotFiniteError, OutOfRangeError
 * Source: F. E. Grubbs, Technometrics 11 (1969) 1-21; ISO 5725-2.
 */
export function grubbsTest(values: ArrayLike<number>, { significance, sides }: GrubbsOptions): GrubbsResult {
  requireSeries('grubbsTest', 'values', values, 3);
  requireNumber('grubbsTest', 'significance', significance, { min: 0, max: 0.5, exclusive: true });
  const { count, mean, sd } = meanAndVariance(values);
  const distances = Array.from(values, (value) => {
    const fromMean = value - mean;
    return sides === 'two' ? Math.abs(fromMean) : sides === 'upper' ? fromMean : -fromMean;
  });
  const suspectIndex = distances.reduce((best, distance, index) => {
    return distance > (distances[best] ?? -Infinity) ? index : best;
  }, 0);
  const spread = sd ?? 0;
  const statistic = spread === 0 ? 0 : (distances[suspectIndex] ?? 0) / spread;
  const criticalValue = criticalGrubbs(count, sides === 'two' ? significance / 2 : significance);
  return { statistic, criticalValue, isOutlier: statistic > criticalValue, suspectIndex };
}

function criticalGrubbs(count: number, oneSidedSignificance: number): number {
  const t = studentTQuantile(1 - oneSidedSignificance / count, count - 2);
  return ((count - 1) / Math.sqrt(count)) * Math.sqrt((t * t) / (count - 2 + t * t));
}
