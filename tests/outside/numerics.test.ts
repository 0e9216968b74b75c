import { readFileSync } from 'node:fs';
import jstat from 'jstat';
import { cumulativeStdNormalProbability, linearRegression, probit, sampleVariance } from 'simple-statistics';
import { expect } from 'vitest';
import {
  chiSquareCdf,
  chiSquareQuantile,
  evaluateMonotoneCubic,
  fitMonotoneCubic,
  isotonicRegression,
  leastSquares,
  logGamma,
  meanAndVariance,
  noncentralTCdf,
  normalCdf,
  normalQuantile,
  regularizedBeta,
  savitzkyGolayWeights,
  slopeOfMonotoneCubic,
  studentTCdf,
  studentTQuantile,
} from '@pullbook/tuning-math';
import { expectPrinted } from './expect-printed.js';
import { outsideCheck } from './outside-check.js';

type Fixture = Record<string, readonly (readonly number[])[]>;
const fixtureFile = new URL('./fixtures/distributions.json', import.meta.url);
const fixture = JSON.parse(readFileSync(fixtureFile, 'utf8')) as Fixture;
const functions: Readonly<Record<string, readonly [(...values: number[]) => number, number]>> = {
  normalCdf: [(z = NaN) => normalCdf(z), 1e-15],
  normalQuantile: [(p = NaN) => normalQuantile(p), 1e-15],
  logGamma: [(x = NaN) => logGamma(x), 1e-14],
  chiSquareCdf: [(x = NaN, df = NaN) => chiSquareCdf(x, df), 1e-13],
  studentTCdf: [(t = NaN, df = NaN) => studentTCdf(t, df), 1e-13],
  noncentralTCdf: [
    (t = NaN, degreesOfFreedom = NaN, noncentrality = NaN) =>
      noncentralTCdf(t, { degreesOfFreedom, noncentrality }),
    1e-12,
  ],
};
for (const [name, [ours, tolerance]] of Object.entries(functions)) {
  outsideCheck(
    {
      id: `numerics/${name}`,
      checks: `${name} over its range, relative error below ${tolerance}`,
      source: 'mpmath with 40 digits and SciPy, by tests/outside/fixtures/distributions.py',
      origin: 'reference library',
    },
    () => {
      const rows = fixture[name] ?? [];
      expect(rows.length).toBeGreaterThan(5);
      for (const row of rows) {
        const wanted = row.at(-1) ?? NaN;
        const miss = Math.abs(ours(...row.slice(0, -1)) - wanted);
        expect(miss, `${name}(${row.slice(0, -1).join(', ')})`).toBeLessThanOrEqual(
          tolerance * Math.max(Math.abs(wanted), name === 'logGamma' ? 1 : 0),
        );
      }
    },
  );
}

const studentT = [
  [1, '6.3138', '12.7062'],
  [2, '2.9200', '4.3027'],
  [3, '2.3534', '3.1824'],
  [4, '2.1318', '2.7764'],
  [5, '2.0150', '2.5706'],
  [9, '1.8331', '2.2622'],
  [10, '1.8125', '2.2281'],
  [14, '1.7613', '2.1448'],
  [19, '1.7291', '2.0930'],
  [29, '1.6991', '2.0452'],
] as const;
outsideCheck(
  {
    id: 'numerics/student-t-table',
    checks: 'quantiles 0.95 and 0.975 for 1 to 29 degrees of freedom',
    source: 'any printed table of Student t',
    origin: 'recomputed',
  },
  () => {
    for (const [df, t95, t975] of studentT) {
      expectPrinted(studentTQuantile(0.95, df), t95);
      expectPrinted(studentTQuantile(0.975, df), t975);
      expectPrinted(-studentTQuantile(0.025, df), t975);
    }
  },
);
const chiSquare = [
  [1, '0.0010', '0.0039', '3.8415', '5.0239'],
  [4, '0.4844', '0.7107', '9.4877', '11.1433'],
  [9, '2.7004', '3.3251', '16.9190', '19.0228'],
  [10, '3.2470', '3.9403', '18.3070', '20.4832'],
  [19, '8.9065', '10.1170', '30.1435', '32.8523'],
  [29, '16.0471', '17.7084', '42.5570', '45.7223'],
] as const;
outsideCheck(
  {
    id: 'numerics/chi-square-table',
    checks: 'quantiles 0.025, 0.05, 0.95, 0.975',
    source: 'any printed table of chi-square; 23.650 at 0.01 and 42 in the NIST/SEMATECH e-Handbook, 7.2.6.3',
    origin: 'recomputed',
  },
  () => {
    for (const [df, ...printed] of chiSquare) {
      [0.025, 0.05, 0.95, 0.975].forEach((p, index) =>
        expectPrinted(chiSquareQuantile(p, df), printed[index] ?? ''),
      );
    }
    expectPrinted(chiSquareQuantile(0.01, 42), '23.650');
  },
);
outsideCheck(
  {
    id: 'numerics/second-opinion-jstat',
    checks: 'distributions and incomplete beta function against jStat, 8 digits',
    source: 'jstat 1.9.6',
    origin: 'reference library',
  },
  () => {
    for (const df of [1, 4, 9, 29]) {
      for (const t of [-2.5, -0.3, 0.8, 3.1])
        expect(studentTCdf(t, df)).toBeCloseTo(jstat.studentt.cdf(t, df), 8);
      for (const x of [0.2, 3, 12]) expect(chiSquareCdf(x, df)).toBeCloseTo(jstat.chisquare.cdf(x, df), 8);
    }
    expect(regularizedBeta({ x: 0.3, a: 2.5, b: 4 }).lower).toBeCloseTo(jstat.ibeta(0.3, 2.5, 4), 8);
  },
);
outsideCheck(
  {
    id: 'numerics/second-opinion-simple-statistics',
    checks: 'variance, straight line and normal distribution',
    source: 'simple-statistics 7.12.1',
    origin: 'reference library',
  },
  () => {
    const values = [139.2, 140.6, 141.1, 139.8, 140.3, 139];
    expect(meanAndVariance(values).variance ?? NaN).toBeCloseTo(sampleVariance(values), 12);
    const line = linearRegression(values.map((value, index) => [index, value]));
    const fit = leastSquares(
      values.map((_, index) => [1, index]),
      values,
    );
    expect(fit.coefficients[0] ?? NaN).toBeCloseTo(line.b, 9);
    expect(fit.coefficients[1] ?? NaN).toBeCloseTo(line.m, 9);
    // That library works from a table and a rough inverse: four digits and three are what it offers.
    expect(normalCdf(1.2)).toBeCloseTo(cumulativeStdNormalProbability(1.2), 4);
    expect(normalQuantile(0.9)).toBeCloseTo(probit(0.9), 2);
  },
);

const rpn14 = { x: [7.99, 8.09, 8.19, 8.7, 9.2, 10, 12, 15, 20] };
const FIVE_DIGITS = [0, 0.27643e-4, 0.4375e-1, 0.16918, 0.46943, 0.94374, 0.99864, 0.99992, 0.99999];
const SIX_DIGITS = [0, 2.76429e-5, 4.37498e-2, 0.169183, 0.469428, 0.94374, 0.998636, 0.999919, 0.999994];
outsideCheck(
  {
    id: 'numerics/pchip-rpn14-values',
    checks: 'eleven values and derivatives of the monotone interpolant',
    source: 'Fritsch & Carlson (1980) data RPN 14 with the PCHIM rule of Fritsch & Butland (1984)',
    origin: 'published',
  },
  () => {
    const curve = fitMonotoneCubic({ ...rpn14, y: FIVE_DIGITS });
    const at = [7.99, 9.191, 10.392, 11.593, 12.794, 13.995, 15.196, 16.397, 17.598, 18.799, 20];
    const values = [
      '0.0000',
      '0.4640',
      '0.9645',
      '0.9965',
      '0.9992',
      '0.9998',
      '0.9999',
      '1.0000',
      '1.0000',
      '1.0000',
      '1.0000',
    ];
    const slopes = [
      '0',
      '6.060e-1',
      '4.569e-2',
      '9.917e-3',
      '6.249e-4',
      '2.708e-4',
      '2.809e-5',
      '2.034e-5',
      '1.308e-5',
      '6.297e-6',
      '0',
    ];
    at.forEach((x, index) => {
      expectPrinted(evaluateMonotoneCubic(curve, x), values[index] ?? '');
      const slope = slopeOfMonotoneCubic(curve, x);
      // The source's data end after five digits, which leaves three in slopes as small as these.
      if (x > 17) expect(Math.abs(slope - Number(slopes[index]))).toBeLessThan(1e-8);
      else expectPrinted(slope, slopes[index] ?? '');
    });
  },
);
outsideCheck(
  {
    id: 'numerics/pchip-rpn14-knots',
    checks: 'slopes at the nine knots, and eight values between them',
    source: 'Fritsch & Butland (1984) on RPN 14; recomputed on its 6-digit form',
    origin: 'published',
  },
  () => {
    const knotSlopes = [
      '0',
      '5.52510E-4',
      '0.33587',
      '0.34944',
      '0.59696',
      '6.03260E-2',
      '8.98335E-4',
      '2.93954E-5',
      '0',
    ];
    fitMonotoneCubic({ ...rpn14, y: FIVE_DIGITS }).slopes.forEach((slope, index) => {
      const printed = Number(knotSlopes[index]);
      // The same five digits of the data leave four in the larger slopes and three in the smallest.
      expect(Math.abs(slope - printed)).toBeLessThanOrEqual(printed < 1e-3 ? 5e-4 * printed : 2e-5 * printed);
    });
    const onSixDigits = [
      '0',
      '5.52508682e-4',
      '0.335876835',
      '0.349449168',
      '0.596958239',
      '6.03218455e-2',
      '9.00395e-4',
      '3.142468e-5',
      '0',
    ];
    fitMonotoneCubic({ ...rpn14, y: SIX_DIGITS }).slopes.forEach((slope, index) => {
      expectPrinted(slope, onSixDigits[index] ?? '');
    });
    const curve = fitMonotoneCubic({ ...rpn14, y: SIX_DIGITS });
    const points = [
      [8.05, '9.956474e-6'],
      [8.15, '0.0235282784'],
      [8.5, '0.1166325769'],
      [9, '0.3375343268'],
      [9.5, '0.6852179451'],
      [11, '0.986043363'],
      [13, '0.9993618221'],
      [17, '0.9999680258'],
    ] as const;
    for (const [x, value] of points) expectPrinted(evaluateMonotoneCubic(curve, x), value);
  },
);
outsideCheck(
  {
    id: 'numerics/pchip-akima',
    checks: 'four values on the Akima data, none below its flat start',
    source: 'Akima, J. ACM 17 (1970) 589, data; PCHIP recomputed with SciPy',
    origin: 'recomputed',
  },
  () => {
    const curve = fitMonotoneCubic({
      x: [0, 2, 3, 5, 6, 8, 9, 11, 12, 14, 15],
      y: [10, 10, 10, 10, 10, 10, 10.5, 15, 50, 60, 85],
    });
    for (const [x, value] of [
      [8.5, '10.154481132'],
      [10, '11.769550133'],
      [11.5, '31.892561983'],
      [13, '55.136363636'],
    ] as const) {
      expectPrinted(evaluateMonotoneCubic(curve, x), value);
    }
    for (let x = 0; x <= 15; x += 0.05)
      expect(evaluateMonotoneCubic(curve, x)).toBeGreaterThanOrEqual(10 - 1e-12);
  },
);
outsideCheck(
  {
    id: 'numerics/isotonic',
    checks: 'six series, with and without weights',
    source:
      'exercise of Robert & Casella for the first series; the others recomputed by two independent codes',
    origin: 'published',
  },
  () => {
    expect(isotonicRegression([23, 27, 25, 28])).toEqual([23, 26, 26, 28]);
    const long = isotonicRegression([1, 2, 3, 3, 1, 6, 7, 8, 11, 9, 10]);
    [1, 2, 7 / 3, 7 / 3, 7 / 3, 6, 7, 8, 10, 10, 10].forEach((value, index) =>
      expect(long[index]).toBeCloseTo(value, 12),
    );
    expect(isotonicRegression([1, 3, 2, 4], [1, 1, 3, 1])).toEqual([1, 2.25, 2.25, 4]);
    expect(isotonicRegression([10, 20, 15, 15, 30], [1, 1, 2, 1, 1])).toEqual([10, 16.25, 16.25, 16.25, 30]);
    expect(isotonicRegression([5, 4, 3, 2, 1])).toEqual([3, 3, 3, 3, 3]);
    isotonicRegression([22.5, 23.333, 20.833, 24.25], [3, 3, 3, 2]).forEach((value, index) =>
      expectPrinted(value, ['22.222', '22.222', '22.222', '24.25'][index] ?? ''),
    );
  },
);

interface WeightRow {
  readonly name: string;
  readonly options: { windowLength: number; degree: number; derivative?: number; position?: number };
  readonly integers: readonly number[];
  readonly norm: number;
}
const SAVITZKY: readonly WeightRow[] = [
  { name: '5 quadratic', options: { windowLength: 5, degree: 2 }, integers: [-3, 12, 17, 12, -3], norm: 35 },
  { name: '7 cubic', options: { windowLength: 7, degree: 3 }, integers: [-2, 3, 6, 7, 6, 3, -2], norm: 21 },
  {
    name: '9 quadratic',
    options: { windowLength: 9, degree: 2 },
    integers: [-21, 14, 39, 54, 59, 54, 39, 14, -21],
    norm: 231,
  },
  {
    name: '11 cubic',
    options: { windowLength: 11, degree: 3 },
    integers: [-36, 9, 44, 69, 84, 89, 84, 69, 44, 9, -36],
    norm: 429,
  },
  {
    name: '7 quartic',
    options: { windowLength: 7, degree: 4 },
    integers: [5, -30, 75, 131, 75, -30, 5],
    norm: 231,
  },
  {
    name: '9 quintic',
    options: { windowLength: 9, degree: 5 },
    integers: [15, -55, 30, 135, 179, 135, 30, -55, 15],
    norm: 429,
  },
  {
    name: '11 quartic',
    options: { windowLength: 11, degree: 4 },
    integers: [18, -45, -10, 60, 120, 143, 120, 60, -10, -45, 18],
    norm: 429,
  },
];
const SAVITZKY_SLOPES: readonly WeightRow[] = [
  {
    name: '5 linear',
    options: { windowLength: 5, degree: 1, derivative: 1 },
    integers: [-2, -1, 0, 1, 2],
    norm: 10,
  },
  {
    name: '7 quadratic',
    options: { windowLength: 7, degree: 2, derivative: 1 },
    integers: [-3, -2, -1, 0, 1, 2, 3],
    norm: 28,
  },
  {
    name: '5 cubic',
    options: { windowLength: 5, degree: 3, derivative: 1 },
    integers: [1, -8, 0, 8, -1],
    norm: 12,
  },
  {
    name: '7 cubic',
    options: { windowLength: 7, degree: 3, derivative: 1 },
    integers: [22, -67, -58, 0, 58, 67, -22],
    norm: 252,
  },
  {
    name: '9 quartic',
    options: { windowLength: 9, degree: 4, derivative: 1 },
    integers: [86, -142, -193, -126, 0, 126, 193, 142, -86],
    norm: 1188,
  },
  {
    name: '11 cubic',
    options: { windowLength: 11, degree: 3, derivative: 1 },
    integers: [300, -294, -532, -503, -296, 0, 296, 503, 532, 294, -300],
    norm: 5148,
  },
  {
    name: '5 second',
    options: { windowLength: 5, degree: 2, derivative: 2 },
    integers: [2, -1, -2, -1, 2],
    norm: 7,
  },
  {
    name: '7 second',
    options: { windowLength: 7, degree: 3, derivative: 2 },
    integers: [5, 0, -3, -4, -3, 0, 5],
    norm: 42,
  },
];
const SAVITZKY_ENDS: readonly WeightRow[] = [
  {
    name: 'first, quadratic',
    options: { windowLength: 5, degree: 2, position: 0 },
    integers: [31, 9, -3, -5, 3],
    norm: 35,
  },
  {
    name: 'second, quadratic',
    options: { windowLength: 5, degree: 2, position: 1 },
    integers: [9, 13, 12, 6, -5],
    norm: 35,
  },
  {
    name: 'first, cubic',
    options: { windowLength: 5, degree: 3, position: 0 },
    integers: [69, 4, -6, 4, -1],
    norm: 70,
  },
  {
    name: 'second, cubic',
    options: { windowLength: 5, degree: 3, position: 1 },
    integers: [2, 27, 12, -8, 2],
    norm: 35,
  },
];
const GOLAY =
  'Savitzky & Golay, Anal. Chem. 36 (1964) 1627, with the corrections of Steinier et al., 44 (1972) 1906';
const groups = [
  ['smoothing', 'smoothing integers of seven windows', SAVITZKY, 'published'],
  ['derivatives', 'first and second derivative integers, in time order', SAVITZKY_SLOPES, 'recomputed'],
  ['ends', 'weights at the first and second sample', SAVITZKY_ENDS, 'recomputed'],
] as const;
for (const [name, checks, rows, origin] of groups) {
  outsideCheck({ id: `numerics/savitzky-golay-${name}`, checks, source: GOLAY, origin }, () => {
    for (const { name: row, options, integers, norm } of rows) {
      savitzkyGolayWeights(options).forEach((weight, index) => {
        expect(weight * norm, `${row}, weight ${index}`).toBeCloseTo(integers[index] ?? NaN, 9);
      });
    }
  });
}
