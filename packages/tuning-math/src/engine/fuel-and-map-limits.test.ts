import { describe, expect, test } from 'vitest';
import { NotFiniteError, OutOfRangeError } from '../errors.js';
import { absoluteKpa } from '../units/index.js';
import {
  boostAtInjectorDuty,
  buildCeiling,
  ceilingMargins,
  chargePath,
  findMapFaults,
  fuelMassFlow,
  injectorDuty,
  leastOverBoostCut,
  torqueAtPower,
  type InjectorDutyLimit,
} from './index.js';

const limit: InjectorDutyLimit = {
  intake: { barometerAbsKpa: absoluteKpa(100), filterLossKpa: 2, coolerLossKpa: 5 },
  inletK: 293.15,
  efficiencyRatio: 0.7,
  cooler: { coolantK: 293.15, effectivenessRatio: 0.7 },
  engine: { displacementLitre: 2, engineSpeedRpm: 6500, volumetricEfficiencyRatio: 0.95 },
  airFuelRatio: 12,
  injectors: {
    injectorCount: 4,
    ratedFlowCm3PerMin: 550,
    ratedDifferenceKpa: 300,
    differenceKpa: 300,
    fuelDensityKgPerLitre: 0.745,
  },
  highestDutyPct: 85,
};

describe('boostAtInjectorDuty', () => {
  test('is the boost at which the charge that it makes takes the injectors to their highest duty', () => {
    const boostKpa = boostAtInjectorDuty(Object.freeze(limit));
    if (boostKpa === null) throw new Error('a limit was wanted');
    const path = chargePath({ ...limit, intake: { ...limit.intake, boostKpa } });
    const fuelKgPerS = fuelMassFlow(path.airKgPerS, 12);
    expect(injectorDuty({ ...limit.injectors, fuelKgPerS })).toBeCloseTo(85, 2);
  });
  test('comes down in colder air and goes up with leaner mixture or larger injectors', () => {
    const at = (change: Partial<InjectorDutyLimit>): number =>
      boostAtInjectorDuty({ ...limit, ...change }) ?? Infinity;
    const cold = { inletK: 263.15, cooler: { coolantK: 263.15, effectivenessRatio: 0.7 } };
    expect(at(cold)).toBeLessThan(at({}));
    expect(at({ airFuelRatio: 13 })).toBeGreaterThan(at({}));
    expect(at({ injectors: { ...limit.injectors, ratedFlowCm3PerMin: 650 } })).toBeGreaterThan(at({}));
  });
  test('is 0 for injectors that do not serve the engine unblown, null for such as are never used up', () => {
    const sized = (ratedFlowCm3PerMin: number): number | null =>
      boostAtInjectorDuty({ ...limit, injectors: { ...limit.injectors, ratedFlowCm3PerMin } });
    expect(sized(100)).toBe(0);
    expect(sized(9000)).toBeNull();
  });
  test.each([NaN, Infinity])('refuses %d as highest duty', (highestDutyPct) => {
    expect(() => boostAtInjectorDuty({ ...limit, highestDutyPct })).toThrow(NotFiniteError);
  });
});

describe('torqueAtPower', () => {
  test('grows with power and falls with speed, and is nothing without power', () => {
    expect(torqueAtPower(200, 6000)).toBeCloseTo(2 * torqueAtPower(100, 6000), 9);
    expect(torqueAtPower(100, 3000)).toBeCloseTo(2 * torqueAtPower(100, 6000), 9);
    expect(torqueAtPower(0, 3000)).toBe(0);
    expect(() => torqueAtPower(100, 0)).toThrow(OutOfRangeError);
    expect(() => torqueAtPower(NaN, 3000)).toThrow(NotFiniteError);
  });
});

describe('findMapFaults', () => {
  const options = { flowUnit: 'kgPerS', reference: 'gas-stand' } as const;
  const places = (csv: string): readonly string[] =>
    findMapFaults(csv, options).map((fault) => fault.argument);
  const good =
    '60000,0.04,1.4\n60000,0.08,1.36\n60000,0.12,1.2\n90000,0.06,1.8\n90000,0.1,1.7\n90000,0.15,1.4';
  test('names every row that cannot be read, by its number in the file', () => {
    expect(places('\nspeed,flow,pressure ratio\n60000,x,1.5\n\n60000,0.1,1.4\n60000,0.2,14\n')).toEqual([
      "row 3, column 'flow'",
      "row 6, column 'pressure ratio'",
    ]);
  });
  test('names a missing column, lines that are too short, and nothing for a good map', () => {
    expect(places('speed,flow\n1,2')).toEqual(['csv']);
    expect(places('speed,flow,pressure ratio\n60000,0.1,1.5\n60000,0.2,1.4')).toEqual(['speed line 60000']);
    expect(places(`speed,flow,pressure ratio\n${good}`)).toEqual([]);
  });
});

describe('leastOverBoostCut', () => {
  test.each([155, 62.5, 5, 3, 0.2])(
    'is the lowest cut under which a ceiling of %d kPa can be built',
    (kpa) => {
      const builtUnder = (overBoostCutKpa: number) =>
        buildCeiling({ overBoostCutKpa }, ceilingMargins({ overBoostCutKpa })).ceilingKpa;
      expect(builtUnder(leastOverBoostCut(kpa))).toBeCloseTo(kpa, 12);
      expect(builtUnder(leastOverBoostCut(kpa) - 0.1)).toBeLessThan(kpa);
    },
  );

  test('refuses what is no ceiling', () => {
    expect(() => leastOverBoostCut(0)).toThrow(OutOfRangeError);
    for (const bad of [NaN, Infinity]) expect(() => leastOverBoostCut(bad)).toThrow(NotFiniteError);
  });
});

describe('ceilingMargins', () => {
  test('are the usual ones, and never eat a limit that a person entered', () => {
    expect(ceilingMargins({ overBoostCutKpa: 160 })).toEqual({ overBoostCutKpa: 5, sensorFullScaleKpa: 5 });
    const tiny = { overBoostCutKpa: 4, sensorFullScaleKpa: 0.1, turboKpa: 100 };
    expect(ceilingMargins(tiny)).toEqual({ overBoostCutKpa: 2, sensorFullScaleKpa: 0.05 });
    expect(buildCeiling(tiny, ceilingMargins(tiny)).ceilingKpa).toBeCloseTo(0.05, 12);
  });
});
