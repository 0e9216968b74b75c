import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { NotFiniteError, OutOfRangeError, TooFewPointsError } from '../errors.js';
import {
  grubbsTest,
  predictionInterval,
  repeatability,
  toleranceFactor,
  toleranceInterval,
} from './index.js';

fc.configureGlobal({ seed: 20261125 });

const notFinite = [NaN, Infinity, -Infinity];
const peak = fc.double({ min: 100, max: 180, noNaN: true });
const peaks = fc.array(peak, { minLength: 3, maxLength: 15 });
const demand = { count: 8, coverageRatio: 0.9, confidenceRatio: 0.95, sides: 'two' } as const;
const promise = { coverageRatio: 0.9, confidenceRatio: 0.95, sides: 'two' } as const;

describe('toleranceFactor', () => {
  test('falls with more pulls and rises with coverage and with confidence', () => {
    for (const sides of ['one', 'two'] as const) {
      const plain = toleranceFactor({ ...demand, sides });
      expect(toleranceFactor({ ...demand, sides, count: 9 })).toBeLessThan(plain);
      expect(toleranceFactor({ ...demand, sides, coverageRatio: 0.95 })).toBeGreaterThan(plain);
      expect(toleranceFactor({ ...demand, sides, confidenceRatio: 0.99 })).toBeGreaterThan(plain);
    }
  });
  test('comes near the normal quantile for very many pulls', () => {
    expect(toleranceFactor({ ...demand, count: 100_000 })).toBeCloseTo(1.645, 1);
  });
  test('a pooled spread needs a far smaller factor than three pulls alone', () => {
    const alone = toleranceFactor({ ...demand, count: 3 });
    const pooled = toleranceFactor({ ...demand, count: 3, degreesOfFreedom: 40 });
    expect(pooled).toBeLessThan(alone / 3);
    expect(toleranceFactor({ ...demand, count: 1, degreesOfFreedom: 40 })).toBeGreaterThan(pooled);
  });
  test('refuses one pull without a pooled spread, NaN, infinity and shares of 0 or 1', () => {
    expect(() => toleranceFactor({ ...demand, count: 1 })).toThrow(OutOfRangeError);
    expect(() => toleranceFactor({ ...demand, count: 2.5 })).toThrow(OutOfRangeError);
    expect(() => toleranceFactor({ ...demand, coverageRatio: 1 })).toThrow(OutOfRangeError);
    expect(() => toleranceFactor({ ...demand, confidenceRatio: 0 })).toThrow(OutOfRangeError);
    for (const bad of notFinite) {
      expect(() => toleranceFactor({ ...demand, coverageRatio: bad })).toThrow(NotFiniteError);
      expect(() => toleranceFactor({ ...demand, count: bad })).toThrow(NotFiniteError);
    }
  });
});

describe('toleranceInterval and predictionInterval', () => {
  test('the interval for the next pull lies inside the one for all pulls', () => {
    fc.assert(
      fc.property(peaks, (values) => {
        const all = toleranceInterval(Object.freeze(values), promise);
        const next = predictionInterval(values, 0.9);
        expect(all.low ?? NaN).toBeLessThanOrEqual(next.low);
        expect(all.high ?? NaN).toBeGreaterThanOrEqual(next.high);
      }),
      { numRuns: 30 },
    );
  });
  test('shift with the peaks', () => {
    const values = [139, 141, 140.5, 142];
    const moved = values.map((value) => value + 10);
    const [here, there] = [toleranceInterval(values, promise), toleranceInterval(moved, promise)];
    expect(there.high ?? NaN).toBeCloseTo((here.high ?? NaN) + 10, 9);
    expect(predictionInterval(moved, 0.95).low).toBeCloseTo(predictionInterval(values, 0.95).low + 10, 9);
  });
  test('have no width where all pulls are equal, and one end only where one is asked for', () => {
    expect(toleranceInterval([140, 140, 140], promise)).toMatchObject({ low: 140, high: 140, sd: 0 });
    const upper = toleranceInterval([139, 141, 140], { ...promise, sides: 'upper' });
    expect(upper.low).toBeNull();
    expect(upper.high).toBeGreaterThan(141);
    expect(toleranceInterval([139, 141, 140], { ...promise, sides: 'lower' }).high).toBeNull();
  });
  test('one pull has an interval only with a pooled spread', () => {
    expect(() => toleranceInterval([140], promise)).toThrow(TooFewPointsError);
    const pooled = { sd: 1.5, degreesOfFreedom: 30 };
    const interval = toleranceInterval([140], { ...promise, pooled });
    expect(interval).toMatchObject({ mean: 140, sd: 1.5, degreesOfFreedom: 30 });
    expect(interval.high).toBeGreaterThan(140 + 1.645 * 1.5);
  });
  test('refuse an empty list, NaN and infinity', () => {
    expect(() => toleranceInterval([], promise)).toThrow(TooFewPointsError);
    expect(() => predictionInterval([1], 0.95)).toThrow(TooFewPointsError);
    expect(() => predictionInterval([1, 2], 1)).toThrow(OutOfRangeError);
    for (const bad of notFinite) {
      expect(() => toleranceInterval([1, bad], promise)).toThrow(NotFiniteError);
      expect(() => predictionInterval([1, bad], 0.95)).toThrow(NotFiniteError);
    }
    const pooled = { sd: -1, degreesOfFreedom: 5 };
    expect(() => toleranceInterval([1, 2], { ...promise, pooled })).toThrow(OutOfRangeError);
  });
});

describe('repeatability', () => {
  test('does not depend on the order of groups or readings, nor on a shift', () => {
    const groups = [
      [140, 142, 141],
      [138, 139.5],
    ];
    const plain = repeatability(groups);
    const shuffled = repeatability([
      [149.5, 148],
      [151, 150, 152],
    ]);
    expect(shuffled.repeatabilitySd).toBeCloseTo(plain.repeatabilitySd, 10);
    expect(shuffled.betweenSd).toBeCloseTo(plain.betweenSd, 10);
    expect(shuffled.mean).toBeCloseTo(plain.mean + 10, 10);
  });
  test('sets a negative variance between groups to 0', () => {
    const alike = repeatability([
      [139, 141],
      [141, 139],
    ]);
    expect(alike.betweenSd).toBe(0);
    expect(alike.reproducibilitySd).toBe(alike.repeatabilitySd);
  });
  test('refuses fewer than two groups, single readings only, an empty group, NaN', () => {
    expect(() => repeatability([])).toThrow(TooFewPointsError);
    expect(() => repeatability([[1, 2]])).toThrow(TooFewPointsError);
    expect(() => repeatability([[1], [2]])).toThrow(TooFewPointsError);
    expect(() => repeatability([[1, 2], []])).toThrow(TooFewPointsError);
    for (const bad of notFinite) expect(() => repeatability([[1, 2], [bad]])).toThrow(NotFiniteError);
  });
});

describe('grubbsTest', () => {
  const options = { significance: 0.05, sides: 'two' } as const;
  test('finds a far value and leaves a plain set alone', () => {
    expect(grubbsTest([140, 141, 139, 140.5, 160], options)).toMatchObject({
      isOutlier: true,
      suspectIndex: 4,
    });
    expect(grubbsTest([140, 141, 139, 140.5, 141.5], options).isOutlier).toBe(false);
    expect(grubbsTest([140, 141, 139, 140.5, 160], { ...options, sides: 'lower' }).isOutlier).toBe(false);
  });
  test('calls nothing an outlier where all values are equal', () => {
    expect(grubbsTest([5, 5, 5], options)).toMatchObject({ statistic: 0, isOutlier: false });
  });
  test('does not change with unit or offset', () => {
    fc.assert(
      fc.property(peaks, (values) => {
        const plain = grubbsTest(Object.freeze(values), options);
        const scaled = grubbsTest(
          values.map((value) => 0.01 * value + 3),
          options,
        );
        expect(scaled.statistic).toBeCloseTo(plain.statistic, 5);
      }),
    );
  });
  test('refuses two values, NaN, infinity and a significance of 0', () => {
    expect(() => grubbsTest([1, 2], options)).toThrow(TooFewPointsError);
    for (const bad of notFinite) expect(() => grubbsTest([1, 2, bad], options)).toThrow(NotFiniteError);
    expect(() => grubbsTest([1, 2, 3], { ...options, significance: 0 })).toThrow(OutOfRangeError);
  });
});
