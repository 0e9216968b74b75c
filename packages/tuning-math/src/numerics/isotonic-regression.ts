import { requireNumber } from '../require-number.js';
import { requireSameLength, requireSeries } from '../require-series.js';

interface Pool {
  readonly mean: number;
  readonly weight: number;
  readonly count: number;
}

/**
 * The nondecreasing series that lies closest to the given one in weighted least squares (pool adjacent
 * violators). For readings that must rise with the setting but scatter.
 *
 * @param values at least one finite value, in order of the setting
 * @param weights as many, each finite and above 0; equal by default
 * @returns as many values, nondecreasing; the weighted mean is kept
 * @throws TooFewPointsError, NotFiniteError, LengthMismatchError, OutOfRangeError
 * Cost: O(n).
 * Source: Barlow, Bartholomew, Bremner & Brunk, Statistical Inference under Order Restrictions (1972).
 * @example isotonicRegression([23, 27, 25, 28]) // [23, 26, 26, 28]
 */
export function isotonicRegression(values: ArrayLike<number>, weights?: ArrayLike<number>): number[] {
  requireSeries('isotonicRegression', 'values', values);
  if (weights !== undefined) checkWeights(weights, values.length);
  const pools: Pool[] = [];
  for (let index = 0; index < values.length; index += 1) {
    pools.push({ mean: values[index] ?? 0, weight: weights?.[index] ?? 1, count: 1 });
    mergeViolators(pools);
  }
  return pools.flatMap((pool) => new Array<number>(pool.count).fill(pool.mean));
}

function checkWeights(weights: ArrayLike<number>, length: number): void {
  requireSameLength('isotonicRegression', 'weights', weights, length);
  for (let index = 0; index < length; index += 1) {
    requireNumber('isotonicRegression', `weights[${index}]`, weights[index] ?? NaN, {
      min: 0,
      exclusive: true,
    });
  }
}

function mergeViolators(pools: Pool[]): void {
  for (;;) {
    const last = pools.at(-1);
    const before = pools.at(-2);
    if (last === undefined || before === undefined || before.mean <= last.mean) return;
    const weight = before.weight + last.weight;
    const mean = before.mean + (last.mean - before.mean) * (last.weight / weight);
    pools.splice(-2, 2, { mean, weight, count: before.count + last.count });
  }
}
