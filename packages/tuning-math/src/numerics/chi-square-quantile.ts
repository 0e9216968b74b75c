import { requireNumber } from '../require-number.js';
import { invertCdf } from './invert-cdf.js';
import { regularizedGamma } from './regularized-gamma.js';

/**
 * The value that a chi-square variable stays below with probability p.
 *
 * @param p probability, above 0 and below 1
 * @param degreesOfFreedom above 0
 * @throws NotFiniteError, OutOfRangeError
 * Source: inversion of chiSquareCdf by Brent's method.
 * @example chiSquareQuantile(0.95, 1) // 3.841458820694124
 */
export function chiSquareQuantile(p: number, degreesOfFreedom: number): number {
  requireNumber('chiSquareQuantile', 'p', p, { min: 0, max: 1, exclusive: true });
  requireNumber('chiSquareQuantile', 'degreesOfFreedom', degreesOfFreedom, { min: 0, exclusive: true });
  const shape = degreesOfFreedom / 2;
  return invertCdf({
    tails: (x) => regularizedGamma(shape, x / 2),
    p,
    low: 0,
    high: degreesOfFreedom + 4 * Math.sqrt(2 * degreesOfFreedom),
    floor: 0,
  });
}
