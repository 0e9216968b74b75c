import { requireNumber } from '../require-number.js';
import { invertCdf } from './invert-cdf.js';
import { noncentralTCdf, type NoncentralT } from './noncentral-t-cdf.js';

/**
 * The value that a noncentral t variable stays below with probability p.
 *
 * @param p probability, above 0 and below 1
 * @throws NotFiniteError, OutOfRangeError
 * Source: inversion of noncentralTCdf by Brent's method.
 * @example noncentralTQuantile(0.95, { degreesOfFreedom: 9, noncentrality: 5.2 })
 */
export function noncentralTQuantile(p: number, distribution: NoncentralT): number {
  requireNumber('noncentralTQuantile', 'p', p, { min: 0, max: 1, exclusive: true });
  const spread = 2 + Math.abs(distribution.noncentrality);
  return invertCdf({
    tails: (t) => {
      const lower = noncentralTCdf(t, distribution);
      return { lower, upper: 1 - lower };
    },
    p,
    low: distribution.noncentrality - spread,
    high: distribution.noncentrality + spread,
  });
}
