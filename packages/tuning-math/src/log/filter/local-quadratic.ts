import { firstIndexFrom, type Series } from './series.js';

/** The least-squares parabola about one moment. */
export interface LocalFit {
  readonly value: number;
  readonly slopePerS: number;
  readonly curvaturePerS2: number;
  /** Variance of `value` for independent noise of variance 1: the sum of squared weights. */
  readonly varianceGain: number;
  readonly sampleCount: number;
}

/** Half width of the window about a moment, s, and the fewest samples in it. */
export interface LocalWindow {
  readonly halfWindowS: number;
  readonly leastSamples: number;
}

/**
 * Value, slope and curvature at `atS` of the parabola fitted to the samples about it by least squares. On
 * an even grid this is the quadratic Savitzky-Golay filter; it needs no even grid, and near an end it
 * fits what there is. Fewer than three samples give their mean, without slope.
 *
 * @param series finite values, times in s rising strictly, at least one
 * Cost: O(log n + samples in the window).
 * Source: Savitzky & Golay, Anal. Chem. 36 (1964) 1627-1639; Fan & Gijbels, Local Polynomial Modelling (1996), section 3.1.
 */
export function localQuadratic(series: Series, atS: number, window: LocalWindow): LocalFit {
  const { start, end } = windowBounds(series.timeS, atS, window);
  const sums = momentSums(series, atS, start, end);
  if (end - start < 3) return meanFit(sums, end - start);
  return solve(sums, end - start) ?? meanFit(sums, end - start);
}

/** Local parabola at every sample. Cost: O(n·w). */
export function smoothSeries(
  series: Series,
  window: LocalWindow,
): { values: Float64Array; varianceGains: Float64Array } {
  const values = new Float64Array(series.values.length);
  const varianceGains = new Float64Array(series.values.length);
  series.timeS.forEach((timeS, index) => {
    const fit = localQuadratic(series, timeS, window);
    values[index] = fit.value;
    varianceGains[index] = fit.varianceGain;
  });
  return { values, varianceGains };
}

const ROUNDING = 1e-9;

function windowBounds(timeS: Float64Array, atS: number, window: LocalWindow): { start: number; end: number } {
  const half = window.halfWindowS * (1 + ROUNDING);
  let start = firstIndexFrom(timeS, atS - half);
  let end = firstIndexFrom(timeS, atS + half);
  while (end - start < window.leastSamples && (start > 0 || end < timeS.length)) {
    const before = start > 0 ? atS - (timeS[start - 1] as number) : Infinity;
    const after = end < timeS.length ? (timeS[end] as number) - atS : Infinity;
    if (before <= after) start -= 1;
    else end += 1;
  }
  return { start, end };
}

/** Sums of powers of x = (t - at)/scale and of x^k·y. The scale keeps the powers within one size. */
interface MomentSums {
  readonly scale: number;
  readonly x: readonly [number, number, number, number, number];
  readonly xy: readonly [number, number, number];
}

function momentSums({ timeS, values }: Series, atS: number, start: number, end: number): MomentSums {
  const reach = Math.max(atS - (timeS[start] ?? atS), (timeS[end - 1] ?? atS) - atS);
  const scale = reach > 0 ? reach : 1;
  let [x1, x2, x3, x4, y0, y1, y2] = [0, 0, 0, 0, 0, 0, 0];
  for (let index = start; index < end; index += 1) {
    const x = ((timeS[index] as number) - atS) / scale;
    const y = values[index] as number;
    const square = x * x;
    x1 += x;
    x2 += square;
    x3 += square * x;
    x4 += square * square;
    y0 += y;
    y1 += x * y;
    y2 += square * y;
  }
  return { scale, x: [end - start, x1, x2, x3, x4], xy: [y0, y1, y2] };
}

function meanFit({ xy }: MomentSums, sampleCount: number): LocalFit {
  return {
    value: sampleCount > 0 ? xy[0] / sampleCount : 0,
    slopePerS: 0,
    curvaturePerS2: 0,
    varianceGain: sampleCount > 0 ? 1 / sampleCount : 1,
    sampleCount,
  };
}

/** Cofactors of the symmetric 3×3 normal matrix; well conditioned because x lies within ±1. */
function solve({ scale, x, xy }: MomentSums, sampleCount: number): LocalFit | null {
  const [s0, s1, s2, s3, s4] = x;
  const c00 = s2 * s4 - s3 * s3;
  const c01 = s2 * s3 - s1 * s4;
  const c02 = s1 * s3 - s2 * s2;
  const c11 = s0 * s4 - s2 * s2;
  const c12 = s1 * s2 - s0 * s3;
  const c22 = s0 * s2 - s1 * s1;
  const determinant = s0 * c00 + s1 * c01 + s2 * c02;
  if (!(determinant > 1e-9 * s0 ** 3)) return null;
  const [y0, y1, y2] = xy;
  return {
    value: (c00 * y0 + c01 * y1 + c02 * y2) / determinant,
    slopePerS: (c01 * y0 + c11 * y1 + c12 * y2) / determinant / scale,
    curvaturePerS2: (2 * (c02 * y0 + c12 * y1 + c22 * y2)) / determinant / (scale * scale),
    varianceGain: c00 / determinant,
    sampleCount,
  };
}
