import { requireNumber } from '../require-number.js';
import { requireSameLength, requireSeries, requireStrictlyIncreasing } from '../require-series.js';

/** A piecewise cubic through knots that never overshoots between them. */
export interface MonotoneCubic {
  readonly x: readonly number[];
  readonly y: readonly number[];
  /** First derivative at each knot. */
  readonly slopes: readonly number[];
}

/**
 * Monotone piecewise cubic interpolant (PCHIP): between two knots it stays between their values, unlike a
 * spline. For maps and response curves.
 *
 * @param series x: at least 2 finite values, strictly increasing; y: as many finite values
 * @returns the knots with the slopes at them, for `evaluateMonotoneCubic`
 * @throws TooFewPointsError, NotFiniteError, LengthMismatchError, NotStrictlyIncreasingError
 * Source: Fritsch & Butland, SIAM J. Sci. Stat. Comput. 5 (1984) 300-304: weighted harmonic mean of the
 * neighbouring secants, three-point ends held monotone. This is not the two-pass limiter of Fritsch &
 * Carlson (1980), which gives other numbers.
 * @example fitMonotoneCubic({ x: [0, 1, 2], y: [0, 1, 4] }).slopes // [0.33.., 1.5, 4.5] limited at the ends
 */
export function fitMonotoneCubic(series: {
  readonly x: ArrayLike<number>;
  readonly y: ArrayLike<number>;
}): MonotoneCubic {
  requireSeries('fitMonotoneCubic', 'x', series.x, 2);
  requireSameLength('fitMonotoneCubic', 'y', series.y, series.x.length);
  requireSeries('fitMonotoneCubic', 'y', series.y, 2);
  requireStrictlyIncreasing('fitMonotoneCubic', 'x', series.x);
  const x = Array.from(series.x);
  const y = Array.from(series.y);
  const widths = differences(x);
  const secants = differences(y).map((rise, index) => rise / at(widths, index));
  return { x, y, slopes: knotSlopes(widths, secants) };
}

/**
 * Value of a monotone cubic at x.
 *
 * @param x inside the knots' range
 * @throws NotFiniteError; OutOfRangeError outside the knots: nothing is extrapolated
 * Cost: O(log n).
 */
export function evaluateMonotoneCubic(curve: MonotoneCubic, x: number): number {
  const { left, t, width } = locate('evaluateMonotoneCubic', curve, x);
  const [y0, y1] = [at(curve.y, left), at(curve.y, left + 1)];
  const [d0, d1] = [at(curve.slopes, left) * width, at(curve.slopes, left + 1) * width];
  const rest = 1 - t;
  return y0 * rest * rest * (1 + 2 * t) + y1 * t * t * (3 - 2 * t) + d0 * t * rest * rest - d1 * t * t * rest;
}

/**
 * Slope of a monotone cubic at x.
 *
 * @param x inside the knots' range
 * @throws NotFiniteError; OutOfRangeError outside the knots
 * Cost: O(log n).
 */
export function slopeOfMonotoneCubic(curve: MonotoneCubic, x: number): number {
  const { left, t, width } = locate('slopeOfMonotoneCubic', curve, x);
  const secant = (at(curve.y, left + 1) - at(curve.y, left)) / width;
  const [d0, d1] = [at(curve.slopes, left), at(curve.slopes, left + 1)];
  return 6 * t * (1 - t) * secant + d0 * (1 - t) * (1 - 3 * t) + d1 * t * (3 * t - 2);
}

function locate(
  functionName: string,
  { x: knots }: MonotoneCubic,
  x: number,
): { left: number; t: number; width: number } {
  requireNumber(functionName, 'x', x, { min: at(knots, 0), max: at(knots, knots.length - 1) });
  let [left, right] = [0, knots.length - 1];
  while (right - left > 1) {
    const middle = (left + right) >> 1;
    if (at(knots, middle) <= x) left = middle;
    else right = middle;
  }
  const width = at(knots, right) - at(knots, left);
  return { left, t: (x - at(knots, left)) / width, width };
}

function knotSlopes(widths: readonly number[], secants: readonly number[]): number[] {
  const last = secants.length - 1;
  if (last === 0) return [at(secants, 0), at(secants, 0)];
  const slopes = [endSlope(at(widths, 0), at(widths, 1), at(secants, 0), at(secants, 1))];
  for (let index = 1; index <= last; index += 1) {
    slopes.push(innerSlope(widths, secants, index));
  }
  slopes.push(endSlope(at(widths, last), at(widths, last - 1), at(secants, last), at(secants, last - 1)));
  return slopes;
}

function innerSlope(widths: readonly number[], secants: readonly number[], index: number): number {
  const [before, after] = [at(secants, index - 1), at(secants, index)];
  if (before === 0 || after === 0 || before > 0 !== after > 0) return 0;
  const weightBefore = 2 * at(widths, index) + at(widths, index - 1);
  const weightAfter = at(widths, index) + 2 * at(widths, index - 1);
  return (weightBefore + weightAfter) / (weightBefore / before + weightAfter / after);
}

/** Three-point slope at an end, turned to 0 or cut to 3 secants where it would break monotonicity. */
function endSlope(nearWidth: number, farWidth: number, near: number, far: number): number {
  const slope = ((2 * nearWidth + farWidth) * near - nearWidth * far) / (nearWidth + farWidth);
  if (Math.sign(slope) !== Math.sign(near)) return 0;
  if (Math.sign(near) !== Math.sign(far) && Math.abs(slope) > 3 * Math.abs(near)) return 3 * near;
  return slope;
}

function differences(values: readonly number[]): number[] {
  return values.slice(1).map((value, index) => value - at(values, index));
}

function at(values: readonly number[], index: number): number {
  return values[index] ?? NaN;
}
