import { chiSquareQuantile } from '../numerics/chi-square-quantile.js';
import { findRoot } from '../numerics/find-root.js';
import { integrate } from '../numerics/integrate.js';
import { noncentralTQuantile } from '../numerics/noncentral-t-quantile.js';
import { normalCdf } from '../numerics/normal-cdf.js';
import { normalPdf } from '../numerics/normal-pdf.js';
import { normalQuantile } from '../numerics/normal-quantile.js';
import { regularizedGamma } from '../numerics/regularized-gamma.js';
import { requireNumber } from '../require-number.js';

/** What a tolerance interval promises, and from how much data. */
export interface ToleranceDemand {
  /** Number of values behind the mean, 1 or more. */
  readonly count: number;
  /** Degrees of freedom of the standard deviation; count - 1 by default, more when it is pooled. */
  readonly degreesOfFreedom?: number;
  /** Share of all future values that the interval holds, such as 0.90. */
  readonly coverageRatio: number;
  /** Confidence that it does, such as 0.95. */
  readonly confidenceRatio: number;
  readonly sides: 'one' | 'two';
}

/** Standard errors of the mean beyond which its density no longer counts in the integral. */
const REACH = 9;

/**
 * Factor k of a normal tolerance interval: with the confidence asked for, mean - k·sd to mean + k·sd (or
 * one of these ends) holds at least the share asked for of all future values. Exact, not approximated.
 *
 * @param demand count from 1 (from 2 without pooled degrees of freedom); shares above 0 and below 1. Mind
 *   the order: coverage 0.90 at confidence 0.95 is not coverage 0.95 at confidence 0.90
 * @returns k, above 0 for coverage over one half
 * @throws NotFiniteError, OutOfRangeError
 * Cost: some thousand evaluations of the gamma or normal distribution, a few milliseconds.
 * Source: ISO 16269-6:2014; one-sided by the noncentral t distribution, two-sided by the integral of Odeh &
 * Owen, Tables for Normal Tolerance Limits (1980); pooled degrees of freedom as in ISO 16269-6, unknown
 * common standard deviation.
 * @example toleranceFactor({ count: 10, coverageRatio: 0.95, confidenceRatio: 0.95, sides: 'two' }) // 3.3934
 */
export function toleranceFactor(demand: ToleranceDemand): number {
  const name = 'toleranceFactor';
  const count = requireNumber(name, 'count', demand.count, { min: 1, max: 1e6, integer: true });
  const degreesOfFreedom = demand.degreesOfFreedom ?? count - 1;
  requireNumber(name, 'degreesOfFreedom', degreesOfFreedom, { min: 1, max: 1e6 });
  const open = { min: 0, max: 1, exclusive: true };
  requireNumber(name, 'coverageRatio', demand.coverageRatio, open);
  requireNumber(name, 'confidenceRatio', demand.confidenceRatio, open);
  const exact = { ...demand, count, degreesOfFreedom };
  return demand.sides === 'one' ? oneSided(exact) : twoSided(exact);
}

type ExactDemand = Required<ToleranceDemand>;

function oneSided({ count, degreesOfFreedom, coverageRatio, confidenceRatio }: ExactDemand): number {
  const root = Math.sqrt(count);
  const noncentrality = normalQuantile(coverageRatio) * root;
  return noncentralTQuantile(confidenceRatio, { degreesOfFreedom, noncentrality }) / root;
}

function twoSided({ count, degreesOfFreedom, coverageRatio, confidenceRatio }: ExactDemand): number {
  const standardError = 1 / Math.sqrt(count);
  const halfWidths = new Map<number, number>();
  const halfWidthAt = (meanError: number): number => {
    const known = halfWidths.get(meanError);
    if (known !== undefined) return known;
    const solved = coveringHalfWidth(meanError, coverageRatio);
    halfWidths.set(meanError, solved);
    return solved;
  };
  const confidenceOf = (k: number): number => {
    const held = (meanError: number): number => {
      const needed = (degreesOfFreedom * halfWidthAt(meanError) ** 2) / (k * k);
      const enough = regularizedGamma(degreesOfFreedom / 2, needed / 2).upper;
      return (2 * normalPdf(meanError / standardError) * enough) / standardError;
    };
    return integrate(held, { low: 0, high: REACH * standardError, absoluteTolerance: 1e-12 }).value;
  };
  const guess = howeFactor(count, degreesOfFreedom, { coverageRatio, confidenceRatio });
  let [low, high] = [guess / 2, guess * 2];
  while (confidenceOf(low) > confidenceRatio) low /= 2;
  while (confidenceOf(high) < confidenceRatio) high *= 2;
  return findRoot((k) => confidenceOf(k) - confidenceRatio, { low, high, tolerance: 1e-11 * guess }).x;
}

/** Half width r, in true standard deviations, that holds the share around a mean that is off by this much. */
function coveringHalfWidth(meanError: number, coverageRatio: number): number {
  const centred = normalQuantile(0.5 + coverageRatio / 2);
  const miss = (r: number): number => normalCdf(r - meanError) - normalCdf(-r - meanError) - coverageRatio;
  return findRoot(miss, { low: Math.max(0, centred - 1e-9), high: centred + meanError + 1e-9 }).x;
}

/** Starting point of the search: Howe, J. Amer. Statist. Assoc. 64 (1969) 610-620. */
function howeFactor(
  count: number,
  degreesOfFreedom: number,
  demand: Pick<ToleranceDemand, 'coverageRatio' | 'confidenceRatio'>,
): number {
  const z = normalQuantile(0.5 + demand.coverageRatio / 2);
  const spread = chiSquareQuantile(1 - demand.confidenceRatio, degreesOfFreedom);
  return z * Math.sqrt((degreesOfFreedom * (1 + 1 / count)) / spread);
}
