import { expect } from 'vitest';
import {
  ewmaChart,
  grubbsTest,
  individualsChart,
  leastSquares,
  meanAndVariance,
  predictionInterval,
  repeatability,
  studentTQuantile,
  toleranceFactor,
  toleranceInterval,
} from '@pullbook/tuning-math';
import { expectPrinted } from './expect-printed.js';
import { outsideCheck } from './outside-check.js';

const HANDBOOK = 'NIST/SEMATECH e-Handbook of Statistical Methods';
const STRD = 'NIST Statistical Reference Datasets';

const twoSided = [
  [4, '6.34', '5.37'],
  [5, '5.08', '4.29'],
  [6, '4.42', '3.73'],
  [7, '4.02', '3.39'],
  [8, '3.75', '3.16'],
  [9, '3.55', '2.99'],
  [10, '3.39', '2.86'],
] as const;
const factor = (
  count: number,
  coverageRatio: number,
  confidenceRatio: number,
  sides: 'one' | 'two',
): number => toleranceFactor({ count, coverageRatio, confidenceRatio, sides });
outsideCheck(
  {
    id: 'statistics/tolerance-two-sided-printed',
    checks: 'two-sided factors, confidence 95 %, coverage 95 and 90 %, n = 4 to 20',
    source: 'Berthouex & Brown, Statistics for Environmental Engineers, Table 21.1',
    origin: 'published',
  },
  () => {
    for (const [count, p95, p90] of twoSided) {
      expectPrinted(factor(count, 0.95, 0.95, 'two'), p95);
      expectPrinted(factor(count, 0.9, 0.95, 'two'), p90);
    }
    expectPrinted(factor(15, 0.95, 0.95, 'two'), '2.96');
    expectPrinted(factor(20, 0.95, 0.95, 'two'), '2.76');
  },
);

const exactFactors = [
  [2, '26.2597', '20.5815', '13.0897', '36.5192', '31.0922', '18.2207'],
  [3, '7.6559', '6.1553', '5.3115', '9.7888', '8.3059', '6.8233'],
  [4, '5.1439', '4.1619', '3.9566', '6.3411', '5.3681', '4.9127'],
  [5, '4.2027', '3.4066', '3.3998', '5.0769', '4.2906', '4.1425'],
  [6, '3.7077', '3.0063', '3.0919', '4.4222', '3.7326', '3.7225'],
  [7, '3.3995', '2.7554', '2.8938', '4.0196', '3.3895', '3.4557'],
  [8, '3.1873', '2.5819', '2.7543', '3.7455', '3.1560', '3.2699'],
  [9, '3.0312', '2.4538', '2.6499', '3.5459', '2.9861', '3.1322'],
  [10, '2.9110', '2.3546', '2.5684', '3.3934', '2.8563', '3.0257'],
  [15, '2.5660', '2.0684', '2.3290', '2.9649', '2.4922', '2.7196'],
  [20, '2.3960', '1.9260', '2.2078', '2.7603', '2.3188', '2.5696'],
  [30, '2.2198', '1.7773', '2.0798', '2.5549', '2.1451', '2.4166'],
] as const;
const demands = [
  ['one', 0.95, 0.95],
  ['one', 0.9, 0.95],
  ['one', 0.95, 0.9],
  ['two', 0.95, 0.95],
  ['two', 0.9, 0.95],
  ['two', 0.95, 0.9],
] as const;
demands.forEach(([sides, coverage, confidence], column) => {
  outsideCheck(
    {
      id: `statistics/tolerance-${sides}-p${coverage * 100}-c${confidence * 100}`,
      checks: `exact ${sides}-sided factor, coverage ${coverage}, confidence ${confidence}, n = 2 to 30`,
      source: 'ISO 16269-6:2014 definitions, recomputed with SciPy and mpmath',
      origin: 'recomputed',
    },
    () => {
      for (const [count, ...factors] of exactFactors) {
        expectPrinted(factor(count, coverage, confidence, sides), factors[column] ?? '');
      }
    },
  );
});
outsideCheck(
  {
    id: 'statistics/tolerance-n50',
    checks: 'one-sided factor for 50 values at 95/95',
    source: 'published tables of one-sided normal tolerance factors',
    origin: 'published',
  },
  () => expectPrinted(factor(50, 0.95, 0.95, 'one'), '2.065'),
);
outsideCheck(
  {
    id: 'statistics/tolerance-not-approximate',
    checks: 'the exact 36.519, 9.789, 6.341, 5.077 and not the 37.674, 9.916, 6.370, 5.079 of old tables',
    source: 'Odeh & Owen (1980) against Bowker (1947)',
    origin: 'recomputed',
  },
  () => {
    [
      ['36.519', 37.674],
      ['9.789', 9.916],
      ['6.341', 6.37],
      ['5.077', 5.079],
    ].forEach(([exact, old], index) => {
      expectPrinted(factor(index + 2, 0.95, 0.95, 'two'), String(exact));
      expect(factor(index + 2, 0.95, 0.95, 'two')).toBeLessThan(Number(old));
    });
  },
);
outsideCheck(
  {
    id: 'statistics/tolerance-worked-case',
    checks:
      'n = 43, coverage 90 %, confidence 99 %: exact factors beside the approximations 2.2173 and 1.8752',
    source: `${HANDBOOK}, 7.2.6.3`,
    origin: 'worked example',
  },
  () => {
    expectPrinted(factor(43, 0.9, 0.99, 'two'), '2.2228');
    expectPrinted(factor(43, 0.9, 0.99, 'one'), '1.8740');
    expect(Math.abs(factor(43, 0.9, 0.99, 'two') / 2.2173 - 1)).toBeLessThan(0.003);
    expect(Math.abs(factor(43, 0.9, 0.99, 'one') / 1.8752 - 1)).toBeLessThan(0.001);
  },
);
outsideCheck(
  {
    id: 'statistics/prediction-interval',
    checks: '95 % factor t·√(1 + 1/n) for n = 3, 5, 10, 20, and its place inside the tolerance interval',
    source: 'Hahn & Meeker, Statistical Intervals, section 4.7',
    origin: 'recomputed',
  },
  () => {
    for (const [count, printed] of [
      [3, '4.9683'],
      [5, '3.0414'],
      [10, '2.3726'],
      [20, '2.1447'],
    ] as const) {
      const values = Array.from({ length: count }, (_, index) => index % 3);
      const { mean, sd } = meanAndVariance(values);
      const next = predictionInterval(values, 0.95);
      expectPrinted((next.high - mean) / (sd ?? NaN), printed);
      const all = toleranceInterval(values, { coverageRatio: 0.95, confidenceRatio: 0.95, sides: 'two' });
      expect(all.high ?? NaN).toBeGreaterThan(next.high);
    }
  },
);

const siRstv = [
  [196.3052, 196.124, 196.189, 196.2569, 196.3403],
  [196.3042, 196.3825, 196.1669, 196.3257, 196.0422],
  [196.1303, 196.2005, 196.2889, 196.0343, 196.1811],
  [196.2795, 196.1748, 196.1494, 196.1485, 195.9885],
  [196.2119, 196.1051, 196.185, 196.0052, 196.209],
];
outsideCheck(
  {
    id: 'statistics/anova-sirstv',
    checks: 'mean squares and F of the silicon resistivity set',
    source: `${STRD}, SiRstv`,
    origin: 'certified',
  },
  () => {
    const result = repeatability(siRstv);
    expect(result).toMatchObject({ degreesOfFreedomBetween: 4, degreesOfFreedomWithin: 20 });
    expect(result.meanSquareBetween / 1.27865654e-2 - 1).toBeCloseTo(0, 8);
    expect(result.meanSquareWithin / 1.0831828e-2 - 1).toBeCloseTo(0, 8);
    expect(result.meanSquareBetween / result.meanSquareWithin).toBeCloseTo(1.18046237440255, 9);
    expect(result.repeatabilitySd).toBeCloseTo(1.04076068334656e-1, 11);
  },
);
outsideCheck(
  {
    id: 'statistics/repeatability-sirstv',
    checks: 's_r, s_L, s_R and the limits r and R = 2.8 s',
    source: 'ISO 5725-2 and ISO 5725-6 on the SiRstv set',
    origin: 'recomputed',
  },
  () => {
    const result = repeatability(siRstv);
    expectPrinted(result.repeatabilitySd, '0.104076');
    expectPrinted(result.betweenSd, '0.0197724');
    expectPrinted(result.reproducibilitySd, '0.1059376');
    expectPrinted(result.repeatabilityLimit, '0.291413');
    expectPrinted(result.reproducibilityLimit, '0.296625');
    expectPrinted(result.mean, '196.189156');
  },
);

const uranium = [199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57];
outsideCheck(
  {
    id: 'statistics/grubbs-uranium',
    checks: 'statistic 2.468765 against the critical 2.032: outlier',
    source: `${HANDBOOK}, 1.3.5.17.1`,
    origin: 'worked example',
  },
  () => {
    const result = grubbsTest(uranium, { significance: 0.05, sides: 'upper' });
    expectPrinted(result.statistic, '2.468765');
    expectPrinted(result.criticalValue, '2.032');
    expectPrinted(result.criticalValue, '2.031652');
    expect(result).toMatchObject({ isOutlier: true, suspectIndex: 7 });
    expectPrinted(grubbsTest(uranium, { significance: 0.05, sides: 'two' }).criticalValue, '2.1266');
  },
);
const grubbs = [
  [3, '1.1543', '1.1547', '1.1531', '1.1546'],
  [4, '1.4813', '1.4962', '1.4625', '1.4925'],
  [5, '1.7150', '1.7637', '1.6714', '1.7489'],
  [6, '1.8871', '1.9728', '1.8221', '1.9442'],
  [7, '2.0200', '2.1391', '1.9381', '2.0973'],
  [8, '2.1266', '2.2744', '2.0317', '2.2208'],
  [10, '2.2900', '2.4821', '2.1761', '2.4097'],
  [15, '2.5483', '2.8061', '2.4090', '2.7049'],
  [20, '2.7082', '3.0008', '2.5566', '2.8838'],
] as const;
outsideCheck(
  {
    id: 'statistics/grubbs-critical',
    checks: 'critical values, n = 3 to 20, 5 and 1 %, one- and two-sided',
    source: 'Grubbs, Technometrics 11 (1969) 1-21',
    origin: 'recomputed',
  },
  () => {
    const critical = (count: number, significance: number, sides: 'two' | 'upper'): number =>
      grubbsTest(
        Array.from({ length: count }, (_, index) => index),
        { significance, sides },
      ).criticalValue;
    for (const [count, two5, two1, one5, one1] of grubbs) {
      expectPrinted(critical(count, 0.05, 'two'), two5);
      expectPrinted(critical(count, 0.01, 'two'), two1);
      expectPrinted(critical(count, 0.05, 'upper'), one5);
      expectPrinted(critical(count, 0.01, 'upper'), one1);
    }
  },
);

const ewmaData = [
  52, 47, 53, 49.3, 50.1, 47, 51, 50.1, 51.2, 50.5, 49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6,
  52.1,
];
const ewmaPrinted = [
  '50.60',
  '49.52',
  '50.56',
  '50.18',
  '50.16',
  '49.21',
  '49.75',
  '49.85',
  '50.26',
  '50.33',
  '50.11',
  '49.36',
  '49.52',
  '50.05',
  '49.38',
  '49.92',
  '50.73',
  '51.23',
  '51.94',
  '51.99',
];
const ewmaSettings = { centre: 50, sd: 2.0539, newestWeight: 0.3 };
outsideCheck(
  {
    id: 'drift/ewma',
    checks: 'twenty averages and both limits, all inside',
    source: `${HANDBOOK}, 6.3.2.4`,
    origin: 'worked example',
  },
  () => {
    const points = ewmaChart(ewmaData, ewmaSettings);
    points.forEach((point, index) => expectPrinted(point.plotted, ewmaPrinted[index] ?? ''));
    expectPrinted(points[0]?.high ?? NaN, '52.5884');
    // The page prints 47.4115; the exact value is 47.41156.
    expect(points[0]?.low).toBeCloseTo(47.4116, 4);
    expect(points.some((point) => point.isOut)).toBe(false);
  },
);
outsideCheck(
  {
    id: 'drift/ewma-growing-limits',
    checks: 'upper limits of the first three points',
    source: `${HANDBOOK}, 6.3.2.4, exact variance`,
    origin: 'recomputed',
  },
  () => {
    const points = ewmaChart(ewmaData, { ...ewmaSettings, limits: 'growing' });
    ['51.8485', '52.2564', '52.4314'].forEach((high, index) =>
      expectPrinted(points[index]?.high ?? NaN, high),
    );
  },
);
outsideCheck(
  {
    id: 'drift/individuals',
    checks: 'centre, mean moving range and limits of ten values',
    source: `${HANDBOOK}, 6.3.2.2 (data from memory)`,
    origin: 'from memory',
  },
  () => {
    const chart = individualsChart([49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1]);
    expectPrinted(chart.centre, '50.81');
    expectPrinted(chart.meanMovingRange, '1.8778');
    expectPrinted(chart.high, '55.8041');
    expectPrinted(chart.low, '45.8159');
  },
);

const norrisY = [
  0.1, 338.8, 118.1, 888, 9.2, 228.1, 668.5, 998.5, 449.1, 778.9, 559.2, 0.3, 0.1, 778.1, 668.8, 339.3, 448.9,
  10.8, 557.7, 228.3, 998, 888.8, 119.6, 0.3, 0.6, 557.6, 339.3, 888, 998.5, 778.9, 10.2, 117.6, 228.9, 668.4,
  449.2, 0.2,
];
const norrisX = [
  0.2, 337.4, 118.2, 884.6, 10.1, 226.5, 666.3, 996.3, 448.6, 777, 558.2, 0.4, 0.6, 775.5, 666.9, 338, 447.5,
  11.6, 556, 228.1, 995.8, 887.6, 120.2, 0.3, 0.3, 556.8, 339.1, 887.2, 999, 779, 11.1, 118.3, 229.2, 669.1,
  448.9, 0.5,
];
outsideCheck(
  {
    id: 'numerics/least-squares-norris',
    checks: 'coefficients, standard errors and residual spread to 10 digits',
    source: `${STRD}, Norris`,
    origin: 'certified',
  },
  () => {
    const fit = leastSquares(
      norrisX.map((x) => [1, x]),
      norrisY,
    );
    const relative = (ours: number | undefined, certified: number): void => {
      expect(Math.abs((ours ?? NaN) / certified - 1)).toBeLessThan(1e-10);
    };
    relative(fit.coefficients[0], -0.262323073774029);
    relative(fit.coefficients[1], 1.00211681802045);
    relative(fit.standardErrors[0], 0.232818234301152);
    relative(fit.standardErrors[1], 0.429796848199937e-3);
    relative(fit.residualSd ?? NaN, 0.884796396144373);
    relative(fit.residualSumOfSquares, 26.6173985294224);
  },
);
const alternating = (first: number, low: number, high: number): number[] => [
  first,
  ...Array.from({ length: 1000 }, (_, index) => (index % 2 === 0 ? low : high)),
];
const numAcc: readonly (readonly [string, number[], number, number, number])[] = [
  ['NumAcc1', [10000001, 10000003, 10000002], 10000002, 1, 12],
  ['NumAcc2', alternating(1.2, 1.1, 1.3), 1.2, 0.1, 12],
  ['NumAcc3', alternating(1000000.2, 1000000.1, 1000000.3), 1000000.2, 0.1, 9],
  ['NumAcc4', alternating(10000000.2, 10000000.1, 10000000.3), 10000000.2, 0.1, 7],
];
for (const [name, values, mean, sd, digits] of numAcc) {
  outsideCheck(
    {
      id: `numerics/mean-and-variance-${name.toLowerCase()}`,
      checks: `mean and standard deviation to ${digits} decimals`,
      source: `${STRD}, ${name}`,
      origin: 'certified',
    },
    () => {
      const moments = meanAndVariance(values);
      expect(Math.abs(moments.mean / mean - 1)).toBeLessThan(1e-14);
      expect(moments.sd ?? NaN).toBeCloseTo(sd, digits);
    },
  );
}
outsideCheck(
  {
    id: 'statistics/mean-confidence',
    checks: 'factor t/√n of a mean for n = 3, 5, 10, 20',
    source: 'any table of Student t',
    origin: 'recomputed',
  },
  () => {
    for (const [count, printed] of [
      [3, '2.4841'],
      [5, '1.2417'],
      [10, '0.7154'],
      [20, '0.4680'],
    ] as const) {
      expectPrinted(studentTQuantile(0.975, count - 1) / Math.sqrt(count), printed);
    }
  },
);
