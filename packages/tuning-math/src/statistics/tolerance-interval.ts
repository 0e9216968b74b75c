import { meanAndVariance } from '../numerics/mean-and-variance.js';
import { requireNumber } from '../require-number.js';
import { requireSeries } from '../require-series.js';
import { toleranceFactor } from './tolerance-factor.js';

/** A spread known from elsewhere, such as the workshop's own repeatability. */
export interface PooledSpread {
  /** Standard deviation, in the unit of the values, 0 or more. */
  readonly sd: number;
  /** Degrees of freedom behind it, 1 or more. */
  readonly degreesOfFreedom: number;
}

/** What the interval promises. */
export interface ToleranceOptions {
  readonly coverageRatio: number;
  readonly confidenceRatio: number;
  /** `two` for both ends, `upper` or `lower` for one. */
  readonly sides: 'two' | 'upper' | 'lower';
  /** Pooled with the values' own spread when given. */
  readonly pooled?: PooledSpread;
}

/** A tolerance interval; an end that was not asked for is null. */
export interface ToleranceInterval {
  readonly low: number | null;
  readonly high: number | null;
  readonly mean: number;
  readonly sd: number;
  readonly degreesOfFreedom: number;
  readonly factor: number;
}

/**
 * Interval that, with the confidence asked for, holds at least the share asked for of all future values.
 *
 * @param values finite; at least 2, or 1 with a pooled spread
 * @throws TooFewPointsError, NotFiniteError, OutOfRangeError
 * Source: ISO 16269-6:2014, normal distribution, mean and standard deviation unknown; see `toleranceFactor`.
 */
export function toleranceInterval(values: ArrayLike<number>, options: ToleranceOptions): ToleranceInterval {
  const { pooled, coverageRatio, confidenceRatio } = options;
  requireSeries('toleranceInterval', 'values', values, pooled === undefined ? 2 : 1);
  const { mean, sd, degreesOfFreedom } = poolSpread(values, pooled);
  const sides = options.sides === 'two' ? 'two' : 'one';
  const demand = { count: values.length, degreesOfFreedom, coverageRatio, confidenceRatio, sides } as const;
  const factor = toleranceFactor(demand);
  return {
    low: options.sides === 'upper' ? null : mean - factor * sd,
    high: options.sides === 'lower' ? null : mean + factor * sd,
    mean,
    sd,
    degreesOfFreedom,
    factor,
  };
}

function poolSpread(
  values: ArrayLike<number>,
  pooled: PooledSpread | undefined,
): { mean: number; sd: number; degreesOfFreedom: number } {
  const own = meanAndVariance(values);
  const ownFreedom = own.count - 1;
  if (pooled === undefined) return { mean: own.mean, sd: own.sd ?? 0, degreesOfFreedom: ownFreedom };
  requireNumber('toleranceInterval', 'pooled.sd', pooled.sd, { min: 0 });
  requireNumber('toleranceInterval', 'pooled.degreesOfFreedom', pooled.degreesOfFreedom, { min: 1 });
  const degreesOfFreedom = ownFreedom + pooled.degreesOfFreedom;
  const squares = ownFreedom * (own.variance ?? 0) + pooled.degreesOfFreedom * pooled.sd ** 2;
  return { mean: own.mean, sd: Math.sqrt(squares / degreesOfFreedom), degreesOfFreedom };
}
