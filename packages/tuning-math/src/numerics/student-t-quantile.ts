import { requireNumber } from '../require-number.js';
import { invertCdf } from './invert-cdf.js';
import { normalQuantile } from './normal-quantile.js';
import { studentTTails } from './student-t-cdf.js';

/**
 * The value that a Student t variable stays below with probability p.
 *
 * @param p probability, above 0 and below 1
 * @param degreesOfFreedom above 0
 * @throws NotFiniteError, OutOfRangeError
 * Source: inversion of studentTCdf by Brent's method.
 * @example studentTQuantile(0.975, 9) // 2.262157162798205
 */
export function studentTQuantile(p: number, degreesOfFreedom: number): number {
  requireNumber('studentTQuantile', 'p', p, { min: 0, max: 1, exclusive: true });
  requireNumber('studentTQuantile', 'degreesOfFreedom', degreesOfFreedom, { min: 0, exclusive: true });
  if (p === 0.5) return 0;
  const start = Math.abs(normalQuantile(p)) + 1;
  return invertCdf({ tails: (t) => studentTTails(t, degreesOfFreedom), p, low: -start, high: start });
}
