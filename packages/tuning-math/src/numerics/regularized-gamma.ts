import { requireNumber } from '../require-number.js';
import { logGamma } from './log-gamma.js';

const MAX_TERMS = 10_000;
/** Below half an ulp of the running sum a further term changes nothing. */
const RELATIVE_STOP = 1e-16;
const TINY = 1e-300;

/** Both tails of a distribution; each is computed so that it keeps its own relative precision. */
export interface Tails {
  readonly lower: number;
  readonly upper: number;
}

/**
 * Regularised incomplete gamma functions P(a, x) and Q(a, x) = 1 - P(a, x).
 *
 * @param a shape, above 0
 * @param x 0 or more
 * @returns lower P and upper Q, each 0 to 1
 * @throws NotFiniteError, OutOfRangeError
 * Source: series and continued fraction of DLMF 8.11.4 and 8.9.2 (modified Lentz evaluation).
 * @example regularizedGamma(1, 2).upper // exp(-2)
 */
export function regularizedGamma(a: number, x: number): Tails {
  requireNumber('regularizedGamma', 'a', a, { min: 0, exclusive: true });
  requireNumber('regularizedGamma', 'x', x, { min: 0 });
  if (x === 0) return { lower: 0, upper: 1 };
  const front = Math.exp(a * Math.log(x) - x - logGamma(a));
  if (x < a + 1) {
    const lower = Math.min(1, front * lowerSeries(a, x));
    return { lower, upper: 1 - lower };
  }
  const upper = Math.min(1, front * upperFraction(a, x));
  return { lower: 1 - upper, upper };
}

function lowerSeries(a: number, x: number): number {
  let term = 1 / a;
  let sum = term;
  for (let n = 1; n < MAX_TERMS && term > sum * RELATIVE_STOP; n += 1) {
    term *= x / (a + n);
    sum += term;
  }
  return sum;
}

function upperFraction(a: number, x: number): number {
  let b = x + 1 - a;
  let c = 1 / TINY;
  let d = 1 / b;
  let value = d;
  for (let n = 1; n < MAX_TERMS; n += 1) {
    const numerator = -n * (n - a);
    b += 2;
    d = 1 / nonZero(numerator * d + b);
    c = nonZero(b + numerator / c);
    value *= d * c;
    if (Math.abs(d * c - 1) < 2 * Number.EPSILON) break;
  }
  return value;
}

function nonZero(value: number): number {
  return Math.abs(value) < TINY ? TINY : value;
}
