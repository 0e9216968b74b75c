import { requireNumber } from '../require-number.js';
import { integrate } from './integrate.js';
import { logGamma } from './log-gamma.js';
import { normalCdf } from './normal-cdf.js';

/** A noncentral t distribution: degrees of freedom from 1, noncentrality of any sign. */
export interface NoncentralT {
  readonly degreesOfFreedom: number;
  readonly noncentrality: number;
}

/** Beyond this many standard deviations of the spread ratio its density no longer counts in a double. */
const SPREADS = 14;

/**
 * Probability that a noncentral t variable, (Z + noncentrality) / sqrt(chi-square / df), is at most t. The
 * exact one-sided tolerance factor rests on it.
 *
 * @param t finite
 * @returns probability, 0 to 1, absolute error about 1e-12
 * @throws NotFiniteError, OutOfRangeError
 * Cost: one adaptive integral, some hundred to a few thousand evaluations of the normal distribution.
 * Source: the defining integral over the chi distribution (Owen, Biometrika 55 (1968) 437-446), by
 * Gauss-Kronrod quadrature; no series, so that large noncentrality does not underflow.
 * @example noncentralTCdf(0, { degreesOfFreedom: 5, noncentrality: 1 }) // normalCdf(-1)
 */
export function noncentralTCdf(t: number, { degreesOfFreedom, noncentrality }: NoncentralT): number {
  requireNumber('noncentralTCdf', 't', t);
  requireNumber('noncentralTCdf', 'degreesOfFreedom', degreesOfFreedom, { min: 1 });
  requireNumber('noncentralTCdf', 'noncentrality', noncentrality);
  if (t === 0) return normalCdf(-noncentrality);
  const logConstant =
    Math.log(2) + (degreesOfFreedom / 2) * Math.log(degreesOfFreedom / 2) - logGamma(degreesOfFreedom / 2);
  // Density of w = sqrt(chi-square / df), the ratio of a sample's spread to the true one.
  const density = (w: number): number =>
    w === 0
      ? spreadDensityAtZero(degreesOfFreedom)
      : Math.exp(logConstant + (degreesOfFreedom - 1) * Math.log(w) - (degreesOfFreedom * w * w) / 2);
  const reach = SPREADS / Math.sqrt(2 * degreesOfFreedom);
  const low = Math.max(0, 1 - reach);
  const high = 1 + reach;
  const step = noncentrality / t;
  const cuts = [low, high, step, step - 8 / Math.abs(t), step + 8 / Math.abs(t)]
    .filter((cut) => cut >= low && cut <= high)
    .sort((a, b) => a - b);
  let total = 0;
  for (let index = 1; index < cuts.length; index += 1) {
    const range = { low: cuts[index - 1] ?? low, high: cuts[index] ?? high, absoluteTolerance: 1e-14 };
    total += integrate((w) => normalCdf(t * w - noncentrality) * density(w), range).value;
  }
  return Math.min(1, Math.max(0, total));
}

function spreadDensityAtZero(degreesOfFreedom: number): number {
  return degreesOfFreedom === 1 ? Math.sqrt(2 / Math.PI) : 0;
}
