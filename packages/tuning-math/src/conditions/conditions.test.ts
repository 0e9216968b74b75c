import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { NotFiniteError, OutOfRangeError, TooFewPointsError } from '../errors.js';
import {
  fitConditions,
  forecastPeak,
  peaksAtReference,
  type ConditionedPull,
  type KnownConditions,
} from './index.js';

fc.configureGlobal({ seed: 20261125 });

const usual: KnownConditions = { gear: 4, gradientPct: 0, intakeC: 20, barometerAbsKpa: 100, heatSoakC: 0 };
const at = (more: Partial<ConditionedPull['conditions']>, peakKpa: number): ConditionedPull => ({
  peakKpa,
  conditions: { ...usual, ...more },
});
const ceiling = { ceilingKpa: 155 };
/** Scatter of about 1 %, fixed, so that the figures are the same every time. */
const SCATTER_KPA = [0.9, -1.2, 0.4, 1.5, -0.6, -1.4, 0.2, 1.1, -0.9, 0.3, -0.2, -0.1];
const plain = SCATTER_KPA.map((scatter) => at({}, 140 + scatter));
/** A car that peaks 1.5 kPa lower with every 5 K of warmer air and 4 kPa lower in third gear. */
const varied = SCATTER_KPA.flatMap((scatter, index) =>
  [0, 10, 25].map((intakeC) => {
    const gear = index % 2 === 0 ? 4 : 3;
    return at({ intakeC, gear }, 140 + scatter - 0.3 * (intakeC - 20) - (gear === 3 ? 4 : 0));
  }),
);
const effectOf = (
  model: ReturnType<typeof fitConditions>,
  condition: string,
): { status: string; effectPct: number } =>
  model.effects.find((effect) => effect.condition === condition) ?? { status: 'missing', effectPct: NaN };

describe('fitConditions', () => {
  test('finds the effects that the pulls tell of, with their size', () => {
    const model = fitConditions(varied);
    expect(effectOf(model, 'intake').status).toBe('seen');
    expect(effectOf(model, 'intake').effectPct).toBeCloseTo((-3 / model.scaleKpa) * 100, 0);
    expect(effectOf(model, 'gear').status).toBe('seen');
    expect(effectOf(model, 'gear').effectPct).toBeCloseTo((4 / model.scaleKpa) * 100, 0);
  });
  test('says unknown where the pulls do not vary', () => {
    const model = fitConditions(plain);
    for (const effect of model.effects) expect(effect.status).toBe('unknown');
    expect(effectOf(fitConditions(varied), 'barometer').status).toBe('unknown');
  });
  test('says none seen where the condition varies and the peak does not', () => {
    const model = fitConditions(
      SCATTER_KPA.map((scatter, index) => at({ barometerAbsKpa: 90 + index * 1.8 }, 140 + scatter)),
    );
    expect(effectOf(model, 'barometer').status).toBe('none-seen');
  });
  test('takes the most frequent gear as reference unless told otherwise', () => {
    expect(fitConditions([at({ gear: 3 }, 139), at({ gear: 3 }, 140), at({}, 142)]).reference.gear).toBe(3);
    expect(fitConditions([at({ gear: 3 }, 139)], { gear: 4 }).reference.gear).toBe(4);
    expect(fitConditions([at({ gear: null }, 139)]).reference.gear).toBe(4);
  });
  test('does not depend on the order of the pulls and leaves them alone', () => {
    const forward = fitConditions(Object.freeze(varied));
    const backward = fitConditions([...varied].reverse());
    expect(effectOf(backward, 'intake').effectPct).toBeCloseTo(effectOf(forward, 'intake').effectPct, 9);
  });
  test('works from a single pull, with every effect unknown', () => {
    const model = fitConditions([at({}, 140)]);
    expect(model.pullCount).toBe(1);
    const forecast = forecastPeak(model, usual, ceiling);
    expect(forecast.lowKpa).toBeLessThan(138);
    expect(forecast.highKpa).toBeGreaterThan(142);
  });
  test('refuses no pull, NaN, infinity and conditions out of this world', () => {
    expect(() => fitConditions([])).toThrow(TooFewPointsError);
    for (const bad of [NaN, Infinity, -Infinity]) {
      expect(() => fitConditions([at({}, bad)])).toThrow(NotFiniteError);
      expect(() => fitConditions([at({ intakeC: bad }, 140)])).toThrow('pulls[0].conditions.intakeC');
    }
    expect(() => fitConditions([at({ barometerAbsKpa: 1013 }, 140)])).toThrow(OutOfRangeError);
    expect(() => fitConditions([at({}, 0)])).toThrow(OutOfRangeError);
  });
});

describe('forecastPeak', () => {
  test('widens and names a condition that the pulls do not tell about', () => {
    const model = fitConditions(plain);
    const here = forecastPeak(model, usual, ceiling);
    const onThePass = forecastPeak(model, { ...usual, barometerAbsKpa: 80 }, ceiling);
    expect(here.unknown).toEqual([]);
    expect(onThePass.unknown).toEqual(['barometer']);
    expect(onThePass.outside).toEqual(['barometer']);
    expect(onThePass.highKpa - onThePass.lowKpa).toBeGreaterThan(2 * (here.highKpa - here.lowKpa));
    expect(onThePass.probabilityOverCeiling).toBeGreaterThan(here.probabilityOverCeiling);
  });
  test('follows an effect that is known', () => {
    const model = fitConditions(varied);
    const cold = forecastPeak(model, { ...usual, intakeC: 0 }, ceiling);
    const warm = forecastPeak(model, { ...usual, intakeC: 25 }, ceiling);
    expect(cold.medianKpa - warm.medianKpa).toBeCloseTo(7.5, 0);
    expect(cold.unknown).toEqual([]);
  });
  test('a missing condition among the pulls makes the forecast less sure, not different', () => {
    const holes = plain.map((pull, index) => (index < 6 ? at({ heatSoakC: null }, pull.peakKpa) : pull));
    const [whole, holey] = [plain, holes].map((pulls) => forecastPeak(fitConditions(pulls), usual, ceiling));
    expect(holey?.medianKpa ?? NaN).toBeCloseTo(whole?.medianKpa ?? NaN, -0.3);
  });
  test('the chance of passing the ceiling falls as the ceiling rises; the range widens with the level', () => {
    const model = fitConditions(varied);
    fc.assert(
      fc.property(
        fc.double({ min: 130, max: 170, noNaN: true }),
        fc.double({ min: 0.5, max: 0.98, noNaN: true }),
        (ceilingKpa, level) => {
          const low = forecastPeak(model, usual, { ceilingKpa, level });
          const high = forecastPeak(model, usual, { ceilingKpa: ceilingKpa + 1, level: level + 0.01 });
          expect(high.probabilityOverCeiling).toBeLessThanOrEqual(low.probabilityOverCeiling);
          expect(high.highKpa).toBeGreaterThan(low.highKpa);
          expect(low.lowKpa).toBeLessThan(low.medianKpa);
        },
      ),
      { numRuns: 40 },
    );
  });
  test('refuses NaN, infinity and a level of 1', () => {
    const model = fitConditions(plain);
    for (const bad of [NaN, Infinity, -Infinity]) {
      expect(() => forecastPeak(model, { ...usual, gear: bad }, ceiling)).toThrow(NotFiniteError);
      expect(() => forecastPeak(model, usual, { ceilingKpa: bad })).toThrow(NotFiniteError);
    }
    expect(() => forecastPeak(model, usual, { ...ceiling, level: 1 })).toThrow(OutOfRangeError);
  });
});

describe('peaksAtReference', () => {
  test('brings pulls of cold and warm air together', () => {
    const model = fitConditions(varied);
    const [cold, warm] = peaksAtReference(model, [at({ intakeC: 0 }, 146), at({ intakeC: 25 }, 138.5)]);
    expect(cold?.peakKpa ?? NaN).toBeCloseTo(140, 0);
    expect(warm?.peakKpa ?? NaN).toBeCloseTo(140, 0);
    expect(cold?.correctionUncertaintyKpa).toBeGreaterThan(0);
  });
  test('leaves a pull at reference alone and says what it did not correct for', () => {
    const model = fitConditions(plain);
    expect(peaksAtReference(model, [at({}, 141)])[0]).toEqual({
      peakKpa: 141,
      correctionUncertaintyKpa: 0,
      notCorrectedFor: [],
    });
    expect(peaksAtReference(model, [at({ barometerAbsKpa: 80, gear: null }, 141)])[0]).toEqual({
      peakKpa: 141,
      correctionUncertaintyKpa: 0,
      notCorrectedFor: ['gear', 'barometer'],
    });
    expect(peaksAtReference(model, [])).toEqual([]);
  });
  test('refuses NaN and infinity', () => {
    const model = fitConditions(plain);
    for (const bad of [NaN, Infinity])
      expect(() => peaksAtReference(model, [at({}, bad)])).toThrow(NotFiniteError);
  });
});
