import fc from 'fast-check';
import { describe, expect, expectTypeOf, test } from 'vitest';
import {
  MissingColumnError,
  NotANumberTextError,
  NotFiniteError,
  NotStrictlyIncreasingError,
  OutOfRangeError,
  TooFewPointsError,
} from '../errors.js';
import { absoluteKpa, gaugeKpa } from '../units/index.js';
import {
  airMassFlow,
  boostAtInjectorLimit,
  boostAtMapLimit,
  buildCeiling,
  chargeDensityRatio,
  chargePath,
  chargeTemperature,
  compressorOutletTemperature,
  compressorPressureRatio,
  correctedFlow,
  correctedShaftSpeed,
  fuelMassFlow,
  injectorDuty,
  locateOnCompressorMap,
  powerBand,
  readCompressorMap,
  type IntakePressures,
} from './index.js';

fc.configureGlobal({ seed: 20261125 });

const notFinite = [NaN, Infinity, -Infinity];
const barometerAbsKpa = absoluteKpa(100);
const injectors = {
  injectorCount: 4,
  ratedFlowCm3PerMin: 550,
  ratedDifferenceKpa: 300,
  differenceKpa: 300,
  fuelDensityKgPerLitre: 0.745,
};
const engine = { displacementLitre: 2, engineSpeedRpm: 6000, volumetricEfficiencyRatio: 0.95 };

// An invented map: three lines whose surge and choke flows rise with speed.
const MAP_CSV = `speed;flow;pressure ratio;efficiency
60000;0,04;1,4;0,66
60000;0,08;1,36;0,74
60000;0,12;1,2;0,60
100000;0,08;2,0;0,66
100000;0,14;1,92;0,76
100000;0,19;1,6;0,60
140000;0,13;2,8;0,64
140000;0,2;2,65;0,73
140000;0,25;2,2;0,58
`;
const map = readCompressorMap(MAP_CSV, { flowUnit: 'kgPerS', reference: 'gas-stand' });

describe('the way of the air', () => {
  test('the compiler does not take gauge pressure for absolute', () => {
    expectTypeOf<IntakePressures['barometerAbsKpa']>().not.toEqualTypeOf<IntakePressures['boostKpa']>();
  });
  test('losses before and after the compressor raise its pressure ratio', () => {
    const plain = { barometerAbsKpa, boostKpa: gaugeKpa(100) };
    expect(compressorPressureRatio(plain)).toBe(2);
    expect(compressorPressureRatio({ ...plain, filterLossKpa: 4, coolerLossKpa: 8 })).toBeCloseTo(
      208 / 96,
      12,
    );
  });
  test('a better compressor and a better cooler give colder air', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1.05, max: 4, noNaN: true }),
        fc.double({ min: 0.4, max: 0.75, noNaN: true }),
        (pressureRatio, efficiencyRatio) => {
          const worse = compressorOutletTemperature({ inletK: 298, pressureRatio, efficiencyRatio });
          const better = compressorOutletTemperature({
            inletK: 298,
            pressureRatio,
            efficiencyRatio: efficiencyRatio + 0.05,
          });
          expect(better).toBeLessThan(worse);
          const cooled = chargeTemperature({ outletK: worse, coolantK: 298, effectivenessRatio: 0.7 });
          expect(cooled).toBeLessThan(worse);
          expect(cooled).toBeGreaterThan(298);
        },
      ),
    );
  });
  test('without a cooler the charge is as hot as the compressor leaves it; pressure ratio 1 heats nothing', () => {
    expect(chargeTemperature({ outletK: 390, coolantK: 298, effectivenessRatio: 0 })).toBe(390);
    expect(compressorOutletTemperature({ inletK: 298, pressureRatio: 1, efficiencyRatio: 0.7 })).toBe(298);
    expect(chargeDensityRatio({ pressureRatio: 1, ambientK: 298, chargeK: 298 })).toBe(1);
  });
  test('air flow is proportional to speed and to absolute pressure', () => {
    const at = (rpm: number, kpa: number): number =>
      airMassFlow({ ...engine, engineSpeedRpm: rpm, manifoldAbsKpa: absoluteKpa(kpa), chargeK: 310 });
    expect(at(6000, 200)).toBeCloseTo(2 * at(3000, 200), 12);
    expect(at(6000, 200)).toBeCloseTo(2 * at(6000, 100), 12);
    expect(at(0, 200)).toBe(0);
  });
  test('every step refuses NaN and infinity', () => {
    for (const bad of notFinite) {
      expect(() => compressorPressureRatio({ barometerAbsKpa: bad as never, boostKpa: gaugeKpa(1) })).toThrow(
        NotFiniteError,
      );
      expect(() =>
        compressorOutletTemperature({ inletK: bad, pressureRatio: 2, efficiencyRatio: 0.7 }),
      ).toThrow(NotFiniteError);
      expect(() => chargeTemperature({ outletK: bad, coolantK: 298, effectivenessRatio: 1 })).toThrow(
        NotFiniteError,
      );
      expect(() => chargeDensityRatio({ pressureRatio: bad, ambientK: 298, chargeK: 300 })).toThrow(
        NotFiniteError,
      );
      expect(() => airMassFlow({ ...engine, manifoldAbsKpa: bad as never, chargeK: 300 })).toThrow(
        NotFiniteError,
      );
      expect(() => fuelMassFlow(bad, 12)).toThrow(NotFiniteError);
      expect(() => injectorDuty({ ...injectors, fuelKgPerS: bad })).toThrow(NotFiniteError);
      expect(() => correctedFlow(bad, { inletK: 298, inletAbsKpa: 100 })).toThrow(NotFiniteError);
      expect(() => correctedShaftSpeed(bad, { inletK: 298, inletAbsKpa: 100 })).toThrow(NotFiniteError);
    }
    expect(() => compressorPressureRatio({ barometerAbsKpa, boostKpa: gaugeKpa(-101) })).toThrow(
      OutOfRangeError,
    );
    expect(() => compressorOutletTemperature({ inletK: 25, pressureRatio: 2, efficiencyRatio: 0.7 })).toThrow(
      OutOfRangeError,
    );
    expect(() => fuelMassFlow(0.1, 0)).toThrow(OutOfRangeError);
  });
});

describe('fuel and power', () => {
  test('injectors lose flow with the root of the pressure difference', () => {
    const full = injectorDuty({ ...injectors, fuelKgPerS: 0.018 });
    const quarter = injectorDuty({ ...injectors, fuelKgPerS: 0.018, differenceKpa: 75 });
    expect(quarter).toBeCloseTo(2 * full, 9);
  });
  test('boostAtInjectorLimit is the boost whose injector duty is the highest allowed', () => {
    const boostKpa = boostAtInjectorLimit({
      engine: { ...engine, chargeK: 320 },
      airFuelRatio: 11.8,
      injectors,
      highestDutyPct: 85,
      barometerAbsKpa,
    });
    const manifoldAbsKpa = absoluteKpa(boostKpa + barometerAbsKpa);
    const air = airMassFlow({ ...engine, chargeK: 320, manifoldAbsKpa });
    expect(injectorDuty({ ...injectors, fuelKgPerS: fuelMassFlow(air, 11.8) })).toBeCloseTo(85, 9);
  });
  test('powerBand holds its estimate and widens with the uncertainty of any input', () => {
    const inputs = {
      airKgPerS: { value: 0.22, uncertaintyPct: 3 },
      airFuelRatio: { value: 11.8, uncertaintyPct: 4 },
      fuelGramsPerKwh: { value: 320, uncertaintyPct: 0 },
    };
    const band = powerBand(inputs);
    expect(band.uncertaintyPct).toBeCloseTo(5, 12);
    expect(band.powerKw).toBeCloseTo(((0.22 / 11.8) * 3.6e6) / 320, 9);
    expect(band.lowKw).toBeLessThan(band.powerKw);
    const wider = powerBand({ ...inputs, fuelGramsPerKwh: { value: 320, uncertaintyPct: 6 } });
    expect(wider.highKw).toBeGreaterThan(band.highKw);
    const exact = { value: 320, uncertaintyPct: 0 };
    const none = powerBand({
      airKgPerS: { value: 0, uncertaintyPct: 0 },
      airFuelRatio: { value: 12, uncertaintyPct: 0 },
      fuelGramsPerKwh: exact,
    });
    expect([none.lowKw, none.powerKw, none.highKw]).toEqual([0, 0, 0]);
    expect(() => powerBand({ ...inputs, level: 1 })).toThrow(OutOfRangeError);
    expect(() => powerBand({ ...inputs, airKgPerS: { value: NaN, uncertaintyPct: 1 } })).toThrow(
      NotFiniteError,
    );
  });
});

describe('buildCeiling', () => {
  test('takes the lowest limit after its margin and says which one binds and by how much', () => {
    const ceiling = buildCeiling({ overBoostCutKpa: 160, turboKpa: 170, engineKpa: 158 });
    expect(ceiling).toEqual({
      ceilingKpa: 155,
      binds: 'over-boost-cut',
      limits: [
        { cause: 'over-boost-cut', statedKpa: 160, marginKpa: 5, limitKpa: 155, headroomKpa: 0 },
        { cause: 'engine', statedKpa: 158, marginKpa: 0, limitKpa: 158, headroomKpa: 3 },
        { cause: 'turbo', statedKpa: 170, marginKpa: 0, limitKpa: 170, headroomKpa: 15 },
      ],
    });
  });
  test('never lies above any limit that was given, whatever they are', () => {
    const limit = fc.option(fc.double({ min: 20, max: 400, noNaN: true }), { nil: undefined });
    fc.assert(
      fc.property(limit, limit, fc.double({ min: 20, max: 400, noNaN: true }), (cut, sensor, turbo) => {
        const limits = {
          ...(cut === undefined ? {} : { overBoostCutKpa: cut }),
          ...(sensor === undefined ? {} : { sensorFullScaleKpa: sensor }),
          turboKpa: turbo,
        };
        const { ceilingKpa } = buildCeiling(Object.freeze(limits));
        for (const valueKpa of Object.values(limits)) expect(ceilingKpa).toBeLessThanOrEqual(valueKpa);
      }),
    );
  });
  test('refuses no limit at all, NaN and a margin that eats its limit', () => {
    expect(() => buildCeiling({})).toThrow(TooFewPointsError);
    for (const bad of notFinite) expect(() => buildCeiling({ turboKpa: bad })).toThrow(NotFiniteError);
    expect(() => buildCeiling({ overBoostCutKpa: 5 })).toThrow(OutOfRangeError);
    expect(() => buildCeiling({ turboKpa: 0 })).toThrow(OutOfRangeError);
  });
});

describe('compressor map', () => {
  test('readCompressorMap reads speed lines in order with the unit of the file', () => {
    expect(map.lines.map((line) => line.shaftSpeedRpm)).toEqual([60000, 100000, 140000]);
    const inPounds = readCompressorMap(
      'Speed,Flow,Pressure_Ratio\n90000,1,1\n90000,10,1.5\n90000,20,1.4\n120000,12,2\n120000,20,1.9\n120000,30,1.7',
      { flowUnit: 'lbPerMin', reference: 'standard-day' },
    );
    expect(inPounds.lines[0]?.flowsKgPerS[1]).toBeCloseTo(0.0755987, 7);
    expect(inPounds.lines[0]?.efficiencyRatios).toBeNull();
  });
  test.each([
    ['', MissingColumnError, "a column 'speed'"],
    ['speed,flow\n1,2', MissingColumnError, "a column 'pressure ratio'"],
    ['speed,flow,pressure ratio\n60000,x,1.5', NotANumberTextError, "row 2, column 'flow'"],
    [
      'speed,flow,pressure ratio\n60000,0.1,1.5\n60000,0.1,1.4\n60000,0.2,1.3',
      NotStrictlyIncreasingError,
      'flow',
    ],
    ['speed,flow,pressure ratio\n60000,0.1,1.5\n60000,0.2,1.4', TooFewPointsError, '60000'],
    ['speed,flow,pressure ratio\n60000,0.1,15', OutOfRangeError, "column 'pressure ratio'"],
  ])('readCompressorMap refuses %j and names the fault', (csv, kind, words) => {
    const read = (): unknown => readCompressorMap(csv, { flowUnit: 'kgPerS', reference: 'gas-stand' });
    expect(read).toThrow(kind);
    expect(read).toThrow(words);
  });
  test('a point of a speed line is found on it, with its efficiency', () => {
    const location = locateOnCompressorMap(map, { correctedFlowKgPerS: 0.14, pressureRatio: 1.92 });
    expect(location.place).toBe('inside');
    expect(location.shaftSpeedRpm).toBeCloseTo(100000, 6);
    expect(location.efficiencyRatio).toBeCloseTo(0.76, 9);
  });
  test('margins shrink to 0 at surge and at choke and turn negative beyond', () => {
    expect(
      locateOnCompressorMap(map, { correctedFlowKgPerS: 0.08, pressureRatio: 2 }).surgeMarginPct,
    ).toBeCloseTo(0, 9);
    expect(locateOnCompressorMap(map, { correctedFlowKgPerS: 0.07, pressureRatio: 2 })).toMatchObject({
      place: 'beyond-surge',
      shaftSpeedRpm: null,
    });
    expect(
      locateOnCompressorMap(map, { correctedFlowKgPerS: 0.19, pressureRatio: 1.6 }).chokeMarginPct,
    ).toBeCloseTo(0, 9);
    expect(locateOnCompressorMap(map, { correctedFlowKgPerS: 0.3, pressureRatio: 1.6 }).place).toBe(
      'beyond-choke',
    );
    expect(locateOnCompressorMap(map, { correctedFlowKgPerS: 0.16, pressureRatio: 3.5 }).place).toBe(
      'above-map',
    );
    expect(locateOnCompressorMap(map, { correctedFlowKgPerS: 0.08, pressureRatio: 1.1 }).place).toBe(
      'below-map',
    );
  });
  test('inside the map speed and margins are known everywhere between the boundaries', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1.45, max: 2.15, noNaN: true }),
        fc.double({ min: 0.02, max: 0.98, noNaN: true }),
        (pressureRatio, share) => {
          const surge = locateOnCompressorMap(map, { correctedFlowKgPerS: 0.14, pressureRatio });
          const surgeFlow = 0.14 / (1 + (surge.surgeMarginPct ?? NaN) / 100);
          const chokeFlow = 0.14 / (1 - (surge.chokeMarginPct ?? NaN) / 100);
          const flow = surgeFlow + share * (chokeFlow - surgeFlow);
          const location = locateOnCompressorMap(map, { correctedFlowKgPerS: flow, pressureRatio });
          expect(location.place).toBe('inside');
          expect(location.shaftSpeedRpm).toBeGreaterThanOrEqual(60000);
          expect(location.shaftSpeedRpm).toBeLessThanOrEqual(140000);
        },
      ),
    );
  });
  test('locateOnCompressorMap refuses NaN and no flow', () => {
    expect(() => locateOnCompressorMap(map, { correctedFlowKgPerS: NaN, pressureRatio: 2 })).toThrow(
      NotFiniteError,
    );
    expect(() => locateOnCompressorMap(map, { correctedFlowKgPerS: 0, pressureRatio: 2 })).toThrow(
      OutOfRangeError,
    );
  });
});

describe('chargePath', () => {
  const inputs = {
    intake: { barometerAbsKpa, boostKpa: gaugeKpa(90), filterLossKpa: 2, coolerLossKpa: 5 },
    inletK: 298,
    efficiencyRatio: 0.7,
    cooler: { coolantK: 298, effectivenessRatio: 0.7 },
    engine: { ...engine, engineSpeedRpm: 4500 },
  };
  test('without a map uses the efficiency given', () => {
    const path = chargePath(inputs);
    expect(path.location).toBeNull();
    expect(path.converged).toBe(true);
    expect(path.pressureRatio).toBeCloseTo(195 / 98, 12);
    expect(path.densityRatio).toBeCloseTo((1.9 * 298) / path.chargeK, 12);
  });
  test('with a map uses the efficiency found there and says that it settled', () => {
    const path = chargePath({ ...inputs, map });
    expect(path.converged).toBe(true);
    expect(path.location?.place).toBe('inside');
    expect(path.efficiencyRatio).toBeCloseTo(path.location?.efficiencyRatio ?? NaN, 8);
  });
  test('below boost the compressor heats nothing', () => {
    const path = chargePath({ ...inputs, intake: { barometerAbsKpa, boostKpa: gaugeKpa(-50) } });
    expect(path.outletK).toBe(298);
  });
  test('boostAtMapLimit is the last whole kPa inside, and null where the line misses the map', () => {
    const { intake, ...rest } = inputs;
    const limit = {
      ...rest,
      map,
      intake: { barometerAbsKpa: intake.barometerAbsKpa },
      chokeMarginPct: 5,
      surgeMarginPct: 5,
    };
    const highest = boostAtMapLimit(limit);
    expect(highest).not.toBeNull();
    const at = (boost: number): number | null =>
      chargePath({ ...limit, intake: { ...limit.intake, boostKpa: gaugeKpa(boost) } }).location
        ?.chokeMarginPct ?? null;
    expect(at(highest ?? NaN) ?? NaN).toBeGreaterThanOrEqual(5);
    const tooBig = { ...limit, engine: { ...engine, displacementLitre: 12 } };
    expect(boostAtMapLimit(tooBig)).toBeNull();
  });
});
