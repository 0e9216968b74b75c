import { drawNormal, seededRandom } from '@pullbook/practice-car';
import {
  ewmaChart,
  fitConditions,
  forecastPeak,
  locateOnCompressorMap,
  powerBand,
  type CompressorMap,
  type ConditionedPull,
} from '@pullbook/tuning-math';
import { expect } from 'vitest';
import { outsideCheck } from './outside-check.js';

/** Peak, gear, gradient, intake, barometer, heat soak of seven invented pulls. */
const PULLS: readonly ConditionedPull[] = (
  [
    [120.4, 3, 0, 20, 100, 0],
    [118.9, 4, 1.5, 28, 99, 8],
    [123.1, 4, 0, 5, 101, 0],
    [119.5, 3, -1, 31, 97, 15],
    [116.2, 4, 2, 22, 88, 4],
    [121.7, 4, 0, 12, 100.5, 2],
    [117.8, 3, 1, 25, 92, 20],
  ] as const
).map(([peakKpa, gear, gradientPct, intakeC, barometerAbsKpa, heatSoakC]) => ({
  peakKpa,
  conditions: { gear, gradientPct, intakeC, barometerAbsKpa, heatSoakC },
}));

outsideCheck(
  {
    id: 'conditions/ridge',
    checks: 'coefficients and their standard deviations at a scatter of 1 %, seven pulls, six unknowns',
    source:
      'Hoerl & Kennard, Technometrics 12 (1970) 55, ridge regression as stacked least squares with NumPy',
    origin: 'recomputed',
  },
  () => {
    const belief = fitConditions(PULLS).beliefs.find(({ scatterPct }) => scatterPct === 1);
    const means = [0.8263072902, -0.1034738995, -0.131887182, -0.8362689685, 2.5776358235, 0.0844737192];
    const sds = [0.6453408252, 0.8743432662, 0.2699225769, 0.5255282895, 0.9513877869, 0.610122698];
    means.forEach((mean, index) => {
      expect(belief?.mean[index]).toBeCloseTo(mean, 8);
      expect(Math.sqrt(belief?.covariance[index]?.[index] ?? NaN)).toBeCloseTo(sds[index] ?? NaN, 8);
    });
  },
);

outsideCheck(
  {
    id: 'conditions/evidence',
    checks: 'weights of the eight scatters',
    source: 'marginal likelihood N(0, X S X^T + s^2 I) of the same pulls with SciPy (Bishop, section 3.5)',
    origin: 'recomputed',
  },
  () => {
    const weights = [
      0.0670129026, 0.200766954, 0.3095299711, 0.2621185537, 0.1219982816, 0.0330266428, 0.0050960696,
      0.0004506245,
    ];
    const { beliefs } = fitConditions(PULLS);
    weights.forEach((weight, index) => expect(beliefs[index]?.weight).toBeCloseTo(weight, 8));
  },
);

outsideCheck(
  {
    id: 'conditions/forecast',
    checks: 'median, 95 % range and chance of passing 125 kPa on a cold morning up a pass',
    source: 'predictive mixture of normals of the same pulls with SciPy (Bishop, section 3.3.2)',
    origin: 'recomputed',
  },
  () => {
    const morning = { gear: 4, gradientPct: 1, intakeC: -5, barometerAbsKpa: 90, heatSoakC: 0 };
    const forecast = forecastPeak(fitConditions(PULLS), morning, { ceilingKpa: 125 });
    expect(forecast.medianKpa).toBeCloseTo(120.10766674, 5);
    expect(forecast.lowKpa).toBeCloseTo(115.80096364, 5);
    expect(forecast.highKpa).toBeCloseTo(123.89042794, 5);
    expect(forecast.probabilityOverCeiling).toBeCloseTo(0.008770314965, 8);
  },
);

outsideCheck(
  {
    id: 'engine/power-band',
    checks:
      '0.2 kg/s of air at 12 to 1 and 300 g/kWh is 200 kW; 3 % and 4 % make 5 %, at 95 % 181.3 to 220.6 kW',
    source:
      'ISO/IEC Guide 98-3, 5.1 (root sum of squares), normal quantile 1.959964 of any printed table; by hand',
    origin: 'exact',
  },
  () => {
    const band = powerBand({
      airKgPerS: { value: 0.2, uncertaintyPct: 3 },
      airFuelRatio: { value: 12, uncertaintyPct: 4 },
      fuelGramsPerKwh: { value: 300, uncertaintyPct: 0 },
    });
    expect(band.powerKw).toBeCloseTo(200, 10);
    expect(band.uncertaintyPct).toBeCloseTo(5, 10);
    expect(band.lowKw).toBeCloseTo(200 / Math.exp(0.0979982), 4);
    expect(band.highKw).toBeCloseTo(200 * Math.exp(0.0979982), 4);
  },
);

outsideCheck(
  {
    id: 'engine/compressor-map',
    checks: 'speed, efficiency and margins to surge and choke halfway between two straight speed lines',
    source: 'linear interpolation by hand: flow 0.225 kg/s, pressure ratio 1.7',
    origin: 'exact',
  },
  () => {
    const line = (shaftSpeedRpm: number, flows: number[], ratios: number[], efficiencies: number[]) => ({
      shaftSpeedRpm,
      flowsKgPerS: flows,
      pressureRatios: ratios,
      efficiencyRatios: efficiencies,
    });
    const map: CompressorMap = {
      reference: 'gas-stand',
      lines: [
        line(80_000, [0.1, 0.2], [1.6, 1.2], [0.6, 0.7]),
        line(120_000, [0.2, 0.4], [2.4, 1.6], [0.64, 0.74]),
      ],
    };
    const located = locateOnCompressorMap(map, { correctedFlowKgPerS: 0.225, pressureRatio: 1.7 });
    expect(located.place).toBe('inside');
    expect(located.shaftSpeedRpm).toBeCloseTo(100_000, 4);
    expect(located.efficiencyRatio).toBeCloseTo(0.67, 8);
    // Surge line from 0.1 at 1.6 to 0.2 at 2.4: 0.1125 at 1.7. Choke from 0.4 at 1.6 to 0.2 at 2.4: 0.375.
    expect(located.surgeMarginPct).toBeCloseTo(100, 8);
    expect(located.chokeMarginPct).toBeCloseTo(40, 8);
  },
);

const RUNS = 3000;
/** Runs are cut off at this many times the expected length: less than e to the minus 11 of them. */
const LONGEST_RUNS = 12;

/** Mean number of values until a chart signals a shift of the mean, in standard deviations. */
function averageRunLength(
  newestWeight: number,
  limitSigmas: number,
  shift: number,
  expected: number,
): number {
  const random = seededRandom(20_261_125);
  const longest = Math.ceil(LONGEST_RUNS * expected);
  let total = 0;
  for (let run = 0; run < RUNS; run += 1) {
    const values = Array.from({ length: longest }, () => shift + drawNormal(random));
    const points = ewmaChart(values, { centre: 0, sd: 1, newestWeight, limitSigmas });
    const first = points.findIndex((point) => point.isOut);
    total += first < 0 ? longest : first + 1;
  }
  return total / RUNS;
}

for (const [newestWeight, limitSigmas, shift, runLength] of [
  [0.1, 2.814, 0.5, 31.3],
  [0.1, 2.814, 1, 10.3],
  [0.1, 2.814, 2, 4.4],
  [0.4, 3.054, 1, 14.3],
  [0.4, 3.054, 2, 3.5],
] as const) {
  outsideCheck(
    {
      id: `drift/ewma-run-length-${newestWeight}-${shift}`,
      checks: `average run length ${runLength} at weight ${newestWeight}, limits ${limitSigmas} sigma, shift ${shift} sigma, within 5 %`,
      source: 'Lucas & Saccucci, Technometrics 32 (1990) 1-12, table of average run lengths',
      origin: 'from memory',
    },
    () => {
      const ratio = averageRunLength(newestWeight, limitSigmas, shift, runLength) / runLength;
      expect(ratio).toBeGreaterThan(0.95);
      expect(ratio).toBeLessThan(1.05);
    },
  );
}

outsideCheck(
  {
    id: 'drift/shewhart-run-length',
    checks: 'average run length 43.9 at a shift of 1 sigma and 6.30 at 2 sigma, limits 3 sigma, within 5 %',
    source:
      'one over the chance of a value outside, 1/(normal(-3 + d) + normal(-3 - d)); 43.89 and 6.30 in tables',
    origin: 'exact',
  },
  () => {
    for (const [shift, runLength] of [
      [1, 43.89],
      [2, 6.303],
    ] as const) {
      const ratio = averageRunLength(1, 3, shift, runLength) / runLength;
      expect(ratio).toBeGreaterThan(0.95);
      expect(ratio).toBeLessThan(1.05);
    }
  },
);
