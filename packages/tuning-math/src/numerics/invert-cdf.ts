import type { Tails } from './regularized-gamma.js';
import { findRoot } from './find-root.js';

/** What a quantile search needs to know of a distribution. */
export interface QuantileSearch {
  /** Both tails at x. */
  readonly tails: (x: number) => Tails;
  readonly p: number;
  /** A bracket to start from; it is widened until it holds the quantile. */
  readonly low: number;
  readonly high: number;
  /** Lower end of the support, where it has one. */
  readonly floor?: number;
}

/**
 * The quantile of a continuous distribution from its tails. It compares the smaller tail, so that a
 * quantile far out keeps its relative precision.
 *
 * Cost: about 15 calls of `tails`.
 */
export function invertCdf({ tails, p, low, high, floor = -Infinity }: QuantileSearch): number {
  const difference = (x: number): number => {
    const { lower, upper } = tails(x);
    return p <= 0.5 ? lower - p : 1 - p - upper;
  };
  let [from, to] = [low, high];
  while (difference(to) < 0) [from, to] = [to, to + 2 * (to - from)];
  while (from > floor && difference(from) > 0) [from, to] = [Math.max(floor, from - 2 * (to - from)), from];
  return findRoot(difference, { low: from, high: to }).x;
}
