import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { NotFiniteError, OutOfRangeError } from '../errors.js';
import {
  chiSquareCdf,
  chiSquareQuantile,
  logGamma,
  noncentralTCdf,
  noncentralTQuantile,
  normalCdf,
  normalPdf,
  normalQuantile,
  regularizedBeta,
  regularizedGamma,
  studentTCdf,
  studentTQuantile,
} from './index.js';

fc.configureGlobal({ seed: 20261125 });

const probability = fc.double({ min: 1e-6, max: 1 - 1e-6, noNaN: true });
const freedom = fc.double({ min: 1, max: 300, noNaN: true });
const notFinite = [NaN, Infinity, -Infinity];

describe('normal distribution', () => {
  test('normalCdf and normalQuantile undo one another', () => {
    fc.assert(
      fc.property(probability, (p) => {
        expect(normalCdf(normalQuantile(p))).toBeCloseTo(p, 13);
      }),
    );
  });
  test('normalCdf of -z is one less normalCdf of z', () => {
    fc.assert(
      fc.property(fc.double({ min: -8, max: 8, noNaN: true }), (z) => {
        expect(normalCdf(-z) + normalCdf(z)).toBeCloseTo(1, 14);
      }),
    );
  });
  test('normalCdf takes infinity as a limit and refuses NaN', () => {
    expect(normalCdf(-Infinity)).toBe(0);
    expect(normalCdf(Infinity)).toBe(1);
    expect(() => normalCdf(NaN)).toThrow(NotFiniteError);
  });
  test('normalPdf is the slope of normalCdf', () => {
    for (const z of [-2, -0.5, 0, 1, 3]) {
      expect((normalCdf(z + 1e-5) - normalCdf(z - 1e-5)) / 2e-5).toBeCloseTo(normalPdf(z), 9);
    }
  });
  test('normalQuantile refuses 0, 1 and what is no probability', () => {
    for (const p of [0, 1, -0.1, 1.1]) expect(() => normalQuantile(p)).toThrow(OutOfRangeError);
    for (const p of notFinite) expect(() => normalQuantile(p)).toThrow(NotFiniteError);
    for (const z of notFinite) expect(() => normalPdf(z)).toThrow(NotFiniteError);
  });
});

describe('gamma and beta functions', () => {
  test('logGamma(5) is the logarithm of 24', () => {
    expect(logGamma(5)).toBeCloseTo(Math.log(24), 14);
  });
  test('logGamma obeys the recurrence of the factorial, also where the formula changes', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 40, noNaN: true }), (x) => {
        expect(logGamma(x + 1)).toBeCloseTo(logGamma(x) + Math.log(x), 11);
      }),
    );
  });
  test('regularizedGamma with shape 1 is the exponential distribution', () => {
    expect(regularizedGamma(1, 2).upper).toBeCloseTo(Math.exp(-2), 15);
    expect(regularizedGamma(3, 0)).toEqual({ lower: 0, upper: 1 });
  });
  test('regularizedBeta with both shapes 1 is x itself and swaps its tails with its shapes', () => {
    expect(regularizedBeta({ x: 0.25, a: 1, b: 1 }).lower).toBeCloseTo(0.25, 15);
    const one = regularizedBeta({ x: 0.3, a: 2.5, b: 4 });
    const other = regularizedBeta({ x: 0.7, a: 4, b: 2.5 });
    expect(one.lower).toBeCloseTo(other.upper, 14);
    expect(regularizedBeta({ x: 0, a: 2, b: 3 }).lower).toBe(0);
    expect(regularizedBeta({ x: 1, a: 2, b: 3 }).lower).toBe(1);
  });
  test('all of them refuse NaN, infinity and shapes of 0 or less', () => {
    for (const bad of notFinite) {
      expect(() => logGamma(bad)).toThrow(NotFiniteError);
      expect(() => regularizedGamma(bad, 1)).toThrow(NotFiniteError);
      expect(() => regularizedGamma(1, bad)).toThrow(NotFiniteError);
      expect(() => regularizedBeta({ x: 0.5, a: bad, b: 1 })).toThrow(NotFiniteError);
    }
    expect(() => logGamma(0)).toThrow(OutOfRangeError);
    expect(() => regularizedGamma(0, 1)).toThrow(OutOfRangeError);
    expect(() => regularizedGamma(1, -1)).toThrow(OutOfRangeError);
    expect(() => regularizedBeta({ x: 1.1, a: 1, b: 1 })).toThrow(OutOfRangeError);
  });
});

describe('chi-square and Student t', () => {
  test('quantile and distribution function undo one another', () => {
    fc.assert(
      fc.property(probability, freedom, (p, df) => {
        expect(chiSquareCdf(chiSquareQuantile(p, df), df)).toBeCloseTo(p, 11);
        expect(studentTCdf(studentTQuantile(p, df), df)).toBeCloseTo(p, 11);
      }),
      { numRuns: 60 },
    );
  });
  test('studentTQuantile is antisymmetric and 0 in the middle', () => {
    expect(studentTQuantile(0.5, 7)).toBe(0);
    expect(studentTQuantile(0.025, 9)).toBeCloseTo(-studentTQuantile(0.975, 9), 12);
  });
  test('they refuse NaN, infinity, no degrees of freedom and what is no probability', () => {
    for (const bad of notFinite) {
      expect(() => chiSquareCdf(bad, 3)).toThrow(NotFiniteError);
      expect(() => chiSquareQuantile(0.5, bad)).toThrow(NotFiniteError);
      expect(() => studentTCdf(bad, 3)).toThrow(NotFiniteError);
      expect(() => studentTQuantile(bad, 3)).toThrow(NotFiniteError);
    }
    expect(() => chiSquareCdf(1, 0)).toThrow(OutOfRangeError);
    expect(() => chiSquareQuantile(1, 3)).toThrow(OutOfRangeError);
    expect(() => studentTCdf(1, -1)).toThrow(OutOfRangeError);
    expect(() => studentTQuantile(0, 3)).toThrow(OutOfRangeError);
  });
});

describe('noncentral t', () => {
  test('noncentralTCdf without noncentrality is Student t', () => {
    fc.assert(
      fc.property(fc.double({ min: -20, max: 20, noNaN: true }), freedom, (t, df) => {
        expect(noncentralTCdf(t, { degreesOfFreedom: df, noncentrality: 0 })).toBeCloseTo(
          studentTCdf(t, df),
          10,
        );
      }),
      { numRuns: 40 },
    );
  });
  test('noncentralTCdf at 0 is the normal distribution at minus the noncentrality', () => {
    expect(noncentralTCdf(0, { degreesOfFreedom: 5, noncentrality: 1 })).toBe(normalCdf(-1));
  });
  test('noncentralTQuantile undoes noncentralTCdf', () => {
    for (const noncentrality of [-3, 0.5, 5.2, 30]) {
      const distribution = { degreesOfFreedom: 9, noncentrality };
      const t = noncentralTQuantile(0.95, distribution);
      expect(noncentralTCdf(t, distribution)).toBeCloseTo(0.95, 10);
    }
  });
  test('refuses NaN, infinity and less than one degree of freedom', () => {
    const plain = { degreesOfFreedom: 5, noncentrality: 1 };
    for (const bad of notFinite) {
      expect(() => noncentralTCdf(bad, plain)).toThrow(NotFiniteError);
      expect(() => noncentralTCdf(1, { ...plain, noncentrality: bad })).toThrow(NotFiniteError);
      expect(() => noncentralTQuantile(bad, plain)).toThrow(NotFiniteError);
    }
    expect(() => noncentralTCdf(1, { ...plain, degreesOfFreedom: 0.5 })).toThrow(OutOfRangeError);
    expect(() => noncentralTQuantile(1, plain)).toThrow(OutOfRangeError);
  });
});
