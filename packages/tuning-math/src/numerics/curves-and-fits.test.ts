import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  LengthMismatchError,
  NotFiniteError,
  NotStrictlyIncreasingError,
  OutOfRangeError,
  TooFewPointsError,
} from '../errors.js';
import {
  evaluateMonotoneCubic,
  findRoot,
  fitMonotoneCubic,
  integrate,
  isotonicRegression,
  leastSquares,
  meanAndVariance,
  quantileSorted,
  savitzkyGolayWeights,
  slopeOfMonotoneCubic,
} from './index.js';

fc.configureGlobal({ seed: 20261125 });

const reading = fc.double({ min: -300, max: 300, noNaN: true });
const readings = fc.array(reading, { minLength: 1, maxLength: 40 });
const notFinite = [NaN, Infinity, -Infinity];

describe('isotonicRegression', () => {
  test('is nondecreasing, idempotent and keeps the mean', () => {
    fc.assert(
      fc.property(readings, (values) => {
        const fitted = isotonicRegression(values);
        fitted.slice(1).forEach((value, index) => expect(value).toBeGreaterThanOrEqual(fitted[index] ?? NaN));
        expect(isotonicRegression(fitted)).toEqual(fitted);
        expect(meanAndVariance(fitted).mean).toBeCloseTo(meanAndVariance(values).mean, 8);
      }),
    );
  });
  test('returns a single value as it is and does not touch its input', () => {
    expect(isotonicRegression([7])).toEqual([7]);
    const frozen = Object.freeze([3, 1, 2]);
    expect(isotonicRegression(frozen)).toEqual([2, 2, 2]);
    expect(frozen).toEqual([3, 1, 2]);
  });
  test('refuses nothing at all, NaN, infinity, wrong lengths and weights of 0', () => {
    expect(() => isotonicRegression([])).toThrow(TooFewPointsError);
    for (const bad of notFinite) expect(() => isotonicRegression([1, bad])).toThrow(NotFiniteError);
    expect(() => isotonicRegression([1, 2], [1])).toThrow(LengthMismatchError);
    expect(() => isotonicRegression([1, 2], [1, 0])).toThrow(OutOfRangeError);
  });
});

describe('fitMonotoneCubic', () => {
  const increasing = fc
    .array(
      fc.tuple(fc.double({ min: 0.1, max: 5, noNaN: true }), fc.double({ min: 0, max: 20, noNaN: true })),
      {
        minLength: 2,
        maxLength: 12,
      },
    )
    .map((steps) => {
      let [x, y] = [0, 0];
      return steps.map(([dx, dy]) => ({ x: (x += dx), y: (y += dy) }));
    });
  test('passes through its knots and never falls where the knots rise', () => {
    fc.assert(
      fc.property(increasing, (points) => {
        const curve = fitMonotoneCubic({ x: points.map((p) => p.x), y: points.map((p) => p.y) });
        for (const { x, y } of points) expect(evaluateMonotoneCubic(curve, x)).toBeCloseTo(y, 9);
        const [from, to] = [points[0]?.x ?? 0, points.at(-1)?.x ?? 0];
        let before = -Infinity;
        for (let step = 0; step <= 200; step += 1) {
          const value = evaluateMonotoneCubic(curve, Math.min(to, from + ((to - from) * step) / 200));
          expect(value).toBeGreaterThanOrEqual(before - 1e-9);
          before = value;
        }
      }),
      { numRuns: 50 },
    );
  });
  test('is a straight line through two knots, with its slope', () => {
    const curve = fitMonotoneCubic({ x: [0, 10], y: [5, 25] });
    expect(evaluateMonotoneCubic(curve, 2.5)).toBe(10);
    expect(slopeOfMonotoneCubic(curve, 2.5)).toBe(2);
  });
  test('slopeOfMonotoneCubic is the derivative of evaluateMonotoneCubic', () => {
    const curve = fitMonotoneCubic({ x: [0, 1, 2, 4], y: [0, 1, 4, 5] });
    for (const x of [0.3, 1.7, 2.2, 3.9]) {
      const step = 1e-6;
      const rise = evaluateMonotoneCubic(curve, x + step) - evaluateMonotoneCubic(curve, x - step);
      expect(slopeOfMonotoneCubic(curve, x)).toBeCloseTo(rise / (2 * step), 6);
    }
  });
  test('refuses one knot, ties, NaN, wrong lengths and any x outside the knots', () => {
    expect(() => fitMonotoneCubic({ x: [], y: [] })).toThrow(TooFewPointsError);
    expect(() => fitMonotoneCubic({ x: [1], y: [1] })).toThrow(TooFewPointsError);
    expect(() => fitMonotoneCubic({ x: [1, 1], y: [1, 2] })).toThrow(NotStrictlyIncreasingError);
    expect(() => fitMonotoneCubic({ x: [1, 2], y: [1, NaN] })).toThrow(NotFiniteError);
    expect(() => fitMonotoneCubic({ x: [1, 2], y: [1] })).toThrow(LengthMismatchError);
    const curve = fitMonotoneCubic({ x: Object.freeze([0, 1]), y: Object.freeze([0, 1]) });
    expect(() => evaluateMonotoneCubic(curve, 1.01)).toThrow(OutOfRangeError);
    expect(() => evaluateMonotoneCubic(curve, NaN)).toThrow(NotFiniteError);
  });
});

describe('savitzkyGolayWeights', () => {
  test('give back any polynomial up to the fitted degree, at every place of the window', () => {
    const polynomial = (t: number): number => 2 - 3 * t + 0.5 * t * t + 0.1 * t ** 3;
    for (let position = 0; position < 9; position += 1) {
      const weights = savitzkyGolayWeights({ windowLength: 9, degree: 3, position });
      const smoothed = weights.reduce((sum, weight, index) => sum + weight * polynomial(index), 0);
      expect(smoothed).toBeCloseTo(polynomial(position), 9);
    }
  });
  test('of a derivative are positive in time order for a rising line', () => {
    const weights = savitzkyGolayWeights({ windowLength: 7, degree: 2, derivative: 1 });
    expect(weights.reduce((sum, weight, index) => sum + weight * 5 * index, 0)).toBeCloseTo(5, 12);
  });
  test('refuse an even window, a degree as long as the window and NaN', () => {
    expect(() => savitzkyGolayWeights({ windowLength: 6, degree: 2 })).toThrow(OutOfRangeError);
    expect(() => savitzkyGolayWeights({ windowLength: 5, degree: 5 })).toThrow(OutOfRangeError);
    expect(() => savitzkyGolayWeights({ windowLength: 5, degree: 2, derivative: 3 })).toThrow(
      OutOfRangeError,
    );
    expect(() => savitzkyGolayWeights({ windowLength: NaN, degree: 2 })).toThrow(NotFiniteError);
  });
});

describe('leastSquares', () => {
  test('finds an exact line, with no residual', () => {
    const fit = leastSquares(
      Object.freeze([
        [1, 0],
        [1, 1],
        [1, 2],
      ]),
      Object.freeze([1, 3, 5]),
    );
    expect(fit.coefficients[0]).toBeCloseTo(1, 12);
    expect(fit.coefficients[1]).toBeCloseTo(2, 12);
    expect(fit.residualSd).toBeCloseTo(0, 12);
  });
  test('leaves residuals that are orthogonal to every column', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(reading, reading), { minLength: 5, maxLength: 20 }), (points) => {
        const design = points.map((_, index) => [1, index, index * index]);
        const fit = leastSquares(
          design,
          points.map(([y]) => y),
        );
        for (const column of [0, 1, 2]) {
          const product = fit.residuals.reduce(
            (sum, value, row) => sum + value * (design[row]?.[column] ?? 0),
            0,
          );
          expect(Math.abs(product)).toBeLessThan(1e-6);
        }
      }),
    );
  });
  test('has no spread and no standard errors where no degree of freedom is left', () => {
    const fit = leastSquares(
      [
        [1, 0],
        [1, 1],
      ],
      [1, 3],
    );
    expect(fit.residualSd).toBeNull();
    expect(fit.standardErrors).toEqual([]);
  });
  test('refuses dependent columns, too few rows, wrong lengths, NaN', () => {
    expect(() =>
      leastSquares(
        [
          [1, 2],
          [2, 4],
          [3, 6],
        ],
        [1, 2, 3],
      ),
    ).toThrow(OutOfRangeError);
    expect(() => leastSquares([[0], [0]], [1, 2])).toThrow(OutOfRangeError);
    expect(() => leastSquares([], [])).toThrow(TooFewPointsError);
    expect(() => leastSquares([[1, 2]], [1])).toThrow(TooFewPointsError);
    expect(() => leastSquares([[1], [1]], [1])).toThrow(LengthMismatchError);
    expect(() => leastSquares([[1, 2], [1], [1, 3]], [1, 2, 3])).toThrow(LengthMismatchError);
    expect(() => leastSquares([[1], [NaN]], [1, 2])).toThrow(NotFiniteError);
    expect(() => leastSquares([[1], [1]], [1, Infinity])).toThrow(NotFiniteError);
  });
});

describe('meanAndVariance', () => {
  test('has no spread for one value and refuses none', () => {
    expect(meanAndVariance([5])).toEqual({ count: 1, mean: 5, variance: null, sd: null });
    expect(() => meanAndVariance([])).toThrow(TooFewPointsError);
    for (const bad of notFinite) expect(() => meanAndVariance([1, bad])).toThrow(NotFiniteError);
  });
  test('moves with a shift and keeps its spread', () => {
    fc.assert(
      fc.property(fc.array(reading, { minLength: 2, maxLength: 30 }), reading, (values, shift) => {
        const plain = meanAndVariance(Object.freeze(values));
        const moved = meanAndVariance(values.map((value) => value + shift));
        expect(moved.mean).toBeCloseTo(plain.mean + shift, 8);
        expect(moved.variance ?? NaN).toBeCloseTo(plain.variance ?? NaN, 6);
      }),
    );
  });
  test('gives a variance of 0 for equal values, never a negative one', () => {
    expect(meanAndVariance([0.1, 0.1, 0.1]).variance).toBe(0);
  });
});

describe('quantileSorted', () => {
  test('gives the ends, the middle and what lies between', () => {
    expect(quantileSorted([1, 2, 3, 4], 0.5)).toBe(2.5);
    expect(quantileSorted([1, 2, 3, 4], 0)).toBe(1);
    expect(quantileSorted([1, 2, 3, 4], 1)).toBe(4);
    expect(quantileSorted([9], 0.3)).toBe(9);
  });
  test('refuses an empty list, NaN and shares outside 0 to 1', () => {
    expect(() => quantileSorted([], 0.5)).toThrow(TooFewPointsError);
    expect(() => quantileSorted([NaN], 0.5)).toThrow(NotFiniteError);
    expect(() => quantileSorted([1], 1.1)).toThrow(OutOfRangeError);
  });
});

describe('findRoot and integrate', () => {
  test('findRoot finds the square root of 2 and says how', () => {
    const root = findRoot((x) => x * x - 2, { low: 0, high: 2 });
    expect(root.x).toBeCloseTo(Math.SQRT2, 14);
    expect(root.converged).toBe(true);
    expect(root.iterations).toBeLessThan(20);
  });
  test('findRoot finds any root of a cubic inside its bracket', () => {
    fc.assert(
      fc.property(fc.double({ min: -9, max: 9, noNaN: true }), (at) => {
        const root = findRoot((x) => (x - at) ** 3 + (x - at), { low: -10, high: 10 });
        expect(root.x).toBeCloseTo(at, 10);
      }),
    );
  });
  test('findRoot refuses ends of one sign, a reversed bracket and a function that is not finite', () => {
    expect(() => findRoot((x) => x * x + 1, { low: -1, high: 1 })).toThrow(OutOfRangeError);
    expect(() => findRoot((x) => x, { low: 1, high: -1 })).toThrow(OutOfRangeError);
    expect(() => findRoot((x) => 1 / x, { low: 0, high: 1 })).toThrow(NotFiniteError);
  });
  test('integrate is exact for a cubic and adds over neighbouring intervals', () => {
    const cubic = (x: number): number => x ** 3 - x + 1;
    const whole = integrate(cubic, { low: -1, high: 3 });
    expect(whole.value).toBeCloseTo(20, 12);
    expect(whole.converged).toBe(true);
    const halves = integrate(cubic, { low: -1, high: 1 }).value + integrate(cubic, { low: 1, high: 3 }).value;
    expect(halves).toBeCloseTo(whole.value, 12);
  });
  test('integrate of an empty interval is 0', () => {
    expect(integrate((x) => x, { low: 2, high: 2 }).value).toBe(0);
  });
  test('integrate says when it could not reach the accuracy', () => {
    const jagged = (x: number): number => Math.sin(1e7 * x);
    const result = integrate(jagged, { low: 0, high: 1, relativeTolerance: 1e-14 });
    expect(result.converged).toBe(false);
    expect(() => integrate((x) => x, { low: 0, high: Infinity })).toThrow(NotFiniteError);
  });
});
