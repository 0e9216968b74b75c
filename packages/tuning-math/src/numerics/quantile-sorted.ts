import { requireNumber } from '../require-number.js';
import { requireSeries } from '../require-series.js';

/**
 * Quantile of values that are already in rising order, interpolated linearly between neighbours.
 *
 * @param sorted at least one finite value, nondecreasing (the caller's promise)
 * @param p share below, 0 to 1
 * @returns the quantile, inside the range of the values
 * @throws TooFewPointsError, NotFiniteError, OutOfRangeError
 * Source: Hyndman & Fan, The American Statistician 50 (1996) 361-365, definition 7.
 * @example quantileSorted([1, 2, 3, 4], 0.5) // 2.5
 */
export function quantileSorted(sorted: ArrayLike<number>, p: number): number {
  requireSeries('quantileSorted', 'sorted', sorted);
  requireNumber('quantileSorted', 'p', p, { min: 0, max: 1 });
  const place = p * (sorted.length - 1);
  const below = Math.floor(place);
  const low = sorted[below] ?? 0;
  const high = sorted[Math.min(below + 1, sorted.length - 1)] ?? 0;
  return low + (high - low) * (place - below);
}
