import { requireNumber } from '../require-number.js';
import { regularizedBeta } from './regularized-beta.js';
import type { Tails } from './regularized-gamma.js';

/**
 * Probability that a Student t variable is at most t.
 *
 * @param t finite
 * @param degreesOfFreedom above 0
 * @returns probability, 0 to 1
 * @throws NotFiniteError, OutOfRangeError
 * Source: Abramowitz & Stegun 26.7.1 with 26.5.27 (incomplete beta function).
 * @example studentTCdf(2.262157162798205, 9) // 0.975
 */
export function studentTCdf(t: number, degreesOfFreedom: number): number {
  requireNumber('studentTCdf', 't', t);
  requireNumber('studentTCdf', 'degreesOfFreedom', degreesOfFreedom, { min: 0, exclusive: true });
  return studentTTails(t, degreesOfFreedom).lower;
}

/** Both tails of Student's t at t, each with its own relative precision. */
export function studentTTails(t: number, degreesOfFreedom: number): Tails {
  const square = t * t;
  const total = degreesOfFreedom + square;
  const x = Number.isFinite(total) ? degreesOfFreedom / total : 0;
  const oneMinusX = Number.isFinite(total) ? square / total : 1;
  const beyond = 0.5 * regularizedBeta({ x, oneMinusX, a: degreesOfFreedom / 2, b: 0.5 }).lower;
  return t > 0 ? { lower: 1 - beyond, upper: beyond } : { lower: beyond, upper: 1 - beyond };
}
