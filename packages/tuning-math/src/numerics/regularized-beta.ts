import { requireNumber } from '../require-number.js';
import { logBeta } from './log-gamma.js';
import type { Tails } from './regularized-gamma.js';

const MAX_TERMS = 10_000;
const TINY = 1e-300;

/** Argument and shapes of the incomplete beta function. */
export interface BetaArguments {
  /** 0 to 1 */
  readonly x: number;
  /** 1 - x, where the caller knows it more precisely than the subtraction gives it */
  readonly oneMinusX?: number;
  /** first shape, above 0 */
  readonly a: number;
  /** second shape, above 0 */
  readonly b: number;
}

/**
 * Regularised incomplete beta function I_x(a, b) and its complement.
 *
 * @returns lower I_x(a, b) and upper 1 - I_x(a, b), each 0 to 1
 * @throws NotFiniteError, OutOfRangeError
 * Source: continued fraction DLMF 8.17.22 (modified Lentz evaluation), symmetry 8.17.4.
 * @example regularizedBeta({ x: 0.25, a: 1, b: 1 }).lower // 0.25
 */
export function regularizedBeta({ x, oneMinusX = 1 - x, a, b }: BetaArguments): Tails {
  requireNumber('regularizedBeta', 'x', x, { min: 0, max: 1 });
  requireNumber('regularizedBeta', 'oneMinusX', oneMinusX, { min: 0, max: 1 });
  requireNumber('regularizedBeta', 'a', a, { min: 0, exclusive: true });
  requireNumber('regularizedBeta', 'b', b, { min: 0, exclusive: true });
  if (x === 0) return { lower: 0, upper: 1 };
  if (oneMinusX === 0) return { lower: 1, upper: 0 };
  const front = Math.exp(a * logOf(x, oneMinusX) + b * logOf(oneMinusX, x) - logBeta(a, b));
  if (x < (a + 1) / (a + b + 2)) {
    const lower = Math.min(1, (front * fraction(x, a, b)) / a);
    return { lower, upper: 1 - lower };
  }
  const upper = Math.min(1, (front * fraction(oneMinusX, b, a)) / b);
  return { lower: 1 - upper, upper };
}

function fraction(x: number, a: number, b: number): number {
  let c = 1;
  let d = 1 / nonZero(1 - ((a + b) * x) / (a + 1));
  let value = d;
  for (let m = 1; m < MAX_TERMS; m += 1) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / nonZero(1 + even * d);
    c = nonZero(1 + even / c);
    value *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / nonZero(1 + odd * d);
    c = nonZero(1 + odd / c);
    value *= d * c;
    if (Math.abs(d * c - 1) < 2 * Number.EPSILON) break;
  }
  return value;
}

/** ln x, through its complement where x is close to 1. */
function logOf(x: number, oneMinusX: number): number {
  return x > 0.5 ? Math.log1p(-oneMinusX) : Math.log(x);
}

function nonZero(value: number): number {
  return Math.abs(value) < TINY ? TINY : value;
}
