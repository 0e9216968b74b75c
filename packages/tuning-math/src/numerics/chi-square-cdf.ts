import { requireNumber } from '../require-number.js';
import { regularizedGamma } from './regularized-gamma.js';

/**
 * Probability that a chi-square variable is at most x.
 *
 * @param x 0 or more
 * @param degreesOfFreedom above 0
 * @returns probability, 0 to 1
 * @throws NotFiniteError, OutOfRangeError
 * Source: Abramowitz & Stegun 26.4.19 (incomplete gamma function).
 * @example chiSquareCdf(3.841458820694124, 1) // 0.95
 */
export function chiSquareCdf(x: number, degreesOfFreedom: number): number {
  requireNumber('chiSquareCdf', 'x', x, { min: 0 });
  requireNumber('chiSquareCdf', 'degreesOfFreedom', degreesOfFreedom, { min: 0, exclusive: true });
  return regularizedGamma(degreesOfFreedom / 2, x / 2).lower;
}
