import { describe, expect, it } from 'vitest';
import { localQuadratic, smoothSeries } from './local-quadratic.js';

/** Savitzky & Golay, Anal. Chem. 36 (1964) 1627-1639, quadratic smoothing: centre rows and end rows. */
const PUBLISHED = [
  { name: '5 points, centre', row: [-3, 12, 17, 12, -3], norm: 35, at: 2 },
  { name: '7 points, centre', row: [-2, 3, 6, 7, 6, 3, -2], norm: 21, at: 3 },
  { name: '9 points, centre', row: [-21, 14, 39, 54, 59, 54, 39, 14, -21], norm: 231, at: 4 },
  { name: '11 points, centre', row: [-36, 9, 44, 69, 84, 89, 84, 69, 44, 9, -36], norm: 429, at: 5 },
  { name: '5 points, first sample', row: [31, 9, -3, -5, 3], norm: 35, at: 0 },
  { name: '5 points, second sample', row: [9, 13, 12, 6, -5], norm: 35, at: 1 },
];

const unitPulse = (length: number, at: number): Float64Array =>
  Float64Array.from({ length }, (_, index) => (index === at ? 1 : 0));
const seconds = (length: number, stepS: number): Float64Array =>
  Float64Array.from({ length }, (_, index) => index * stepS);

describe('localQuadratic', () => {
  it.each(PUBLISHED)('has the Savitzky-Golay weights on an even grid: $name', ({ row, norm, at }) => {
    const stepS = 0.02;
    const timeS = seconds(row.length, stepS);
    const window = { halfWindowS: row.length * stepS, leastSamples: 3 };
    row.forEach((weight, index) => {
      const fit = localQuadratic({ timeS, values: unitPulse(row.length, index) }, at * stepS, window);
      expect(fit.value).toBeCloseTo(weight / norm, 10);
    });
  });

  it('gives the derivative weights -2 … 2 / 10 in time order, so that a rise has a positive slope', () => {
    const timeS = seconds(5, 1);
    const slopes = [0, 1, 2, 3, 4].map(
      (index) =>
        localQuadratic({ timeS, values: unitPulse(5, index) }, 2, { halfWindowS: 2, leastSamples: 3 })
          .slopePerS,
    );
    expect(slopes.map((slope) => slope * 10)).toEqual(
      [-2, -1, 0, 1, 2].map((weight) => expect.closeTo(weight, 10)),
    );
  });

  it('reports the variance gain of the 7-point row, 7/21', () => {
    const series = { timeS: seconds(7, 1), values: unitPulse(7, 0) };
    expect(localQuadratic(series, 3, { halfWindowS: 3, leastSamples: 3 }).varianceGain).toBeCloseTo(
      7 / 21,
      12,
    );
  });

  it('returns a parabola unchanged on an uneven grid, with its slope and curvature', () => {
    const timeS = Float64Array.of(0, 0.013, 0.04, 0.055, 0.09, 0.11, 0.16);
    const values = timeS.map((time) => 3 - 20 * time + 150 * time * time);
    const fit = localQuadratic({ timeS, values }, 0.05, { halfWindowS: 0.2, leastSamples: 5 });
    expect(fit.value).toBeCloseTo(3 - 1 + 0.375, 9);
    expect(fit.slopePerS).toBeCloseTo(-20 + 15, 7);
    expect(fit.curvaturePerS2).toBeCloseTo(300, 5);
  });

  it('gives the mean of one or two samples', () => {
    const one = { timeS: Float64Array.of(1), values: Float64Array.of(7) };
    const two = { timeS: Float64Array.of(1, 2), values: Float64Array.of(7, 9) };
    const window = { halfWindowS: 1, leastSamples: 5 };
    expect(localQuadratic(one, 1, window).value).toBe(7);
    expect(localQuadratic(two, 1, window).value).toBe(8);
  });

  it('widens its window to the asked number of samples where sampling is slow', () => {
    const timeS = seconds(20, 1);
    expect(
      localQuadratic({ timeS, values: timeS }, 10, { halfWindowS: 0.1, leastSamples: 5 }).sampleCount,
    ).toBe(5);
  });
});

describe('smoothSeries', () => {
  it('leaves its input as it was', () => {
    const values = Float64Array.of(1, 5, 2, 8, 3);
    smoothSeries({ timeS: seconds(5, 1), values }, { halfWindowS: 2, leastSamples: 3 });
    expect([...values]).toEqual([1, 5, 2, 8, 3]);
  });
});
