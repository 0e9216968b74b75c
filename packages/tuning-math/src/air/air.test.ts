import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { NotFiniteError, OutOfRangeError } from '../errors.js';
import {
  barometerAtAltitude,
  dieselPowerCorrection,
  dryAirPressure,
  expectedIdleVacuum,
  geopotentialAltitude,
  moistAirDensity,
  powerCorrection,
  standardAtmosphere,
  vapourPressure,
  type CorrectionStandard,
  type VapourFormula,
} from './index.js';

fc.configureGlobal({ seed: 20261125 });

const notFinite = [NaN, Infinity, -Infinity];
const altitude = fc.double({ min: -500, max: 5000, noNaN: true });
const formulas: VapourFormula[] = ['wmo-magnus', 'sonntag', 'cipm-2007', 'buck-1996'];
const reading = { barometerAbsKpa: 101.325, temperatureC: 20, humidityPct: 50 };

describe('standardAtmosphere and barometerAtAltitude', () => {
  test('pressure, temperature and density all fall with altitude', () => {
    fc.assert(
      fc.property(altitude, (metres) => {
        const [low, high] = [standardAtmosphere(metres), standardAtmosphere(metres + 10)];
        expect(high.pressureAbsKpa).toBeLessThan(low.pressureAbsKpa);
        expect(high.temperatureK).toBeLessThan(low.temperatureK);
        expect(high.densityKgPerM3).toBeLessThan(low.densityKgPerM3);
      }),
    );
  });
  test('barometerAtAltitude with standard sea-level pressure is the standard atmosphere', () => {
    fc.assert(
      fc.property(altitude, (altitudeM) => {
        const barometer = barometerAtAltitude({ seaLevelAbsKpa: 101.325, altitudeM });
        expect(barometer).toBeCloseTo(standardAtmosphere(altitudeM).pressureAbsKpa, 10);
      }),
    );
  });
  test('barometerAtAltitude at sea level is the sea-level pressure', () => {
    expect(barometerAtAltitude({ seaLevelAbsKpa: 98.7, altitudeM: 0 })).toBeCloseTo(98.7, 10);
  });
  test('geopotentialAltitude is a little below the height on the map', () => {
    expect(geopotentialAltitude(0)).toBe(0);
    expect(geopotentialAltitude(2000)).toBeCloseTo(1999.371, 3);
  });
  test('refuse NaN, infinity and what is no place on land', () => {
    for (const bad of notFinite) {
      expect(() => standardAtmosphere(bad)).toThrow(NotFiniteError);
      expect(() => geopotentialAltitude(bad)).toThrow(NotFiniteError);
      expect(() => barometerAtAltitude({ seaLevelAbsKpa: bad, altitudeM: 0 })).toThrow(NotFiniteError);
    }
    expect(() => standardAtmosphere(12_000)).toThrow(OutOfRangeError);
    expect(() => geopotentialAltitude(-6000)).toThrow(OutOfRangeError);
    // hectopascals typed into a field of kilopascals
    expect(() => barometerAtAltitude({ seaLevelAbsKpa: 1013, altitudeM: 0 })).toThrow(OutOfRangeError);
  });
});

describe('vapourPressure and dryAirPressure', () => {
  test('every formula rises with temperature', () => {
    for (const formula of formulas) {
      for (let t = 1; t <= 60; t += 1) {
        expect(vapourPressure(t, formula)).toBeGreaterThan(vapourPressure(t - 1, formula));
      }
    }
  });
  test('dry air of no humidity has the whole barometer', () => {
    expect(dryAirPressure({ ...reading, humidityPct: 0 })).toBe(101.325);
  });
  test('more humidity leaves less dry pressure', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 99, noNaN: true }), (humidityPct) => {
        const drier = dryAirPressure({ ...reading, humidityPct });
        expect(dryAirPressure({ ...reading, humidityPct: humidityPct + 1 })).toBeLessThan(drier);
      }),
    );
  });
  test('refuse NaN, infinity, a formula that is not known and air outside its range', () => {
    for (const bad of notFinite) {
      expect(() => vapourPressure(bad)).toThrow(NotFiniteError);
      expect(() => dryAirPressure({ ...reading, humidityPct: bad })).toThrow(NotFiniteError);
    }
    expect(() => vapourPressure(20, 'guess' as VapourFormula)).toThrow(OutOfRangeError);
    expect(() => vapourPressure(-10, 'cipm-2007')).toThrow(OutOfRangeError);
    expect(() => dryAirPressure({ ...reading, humidityPct: 101 })).toThrow(OutOfRangeError);
    expect(() => dryAirPressure({ ...reading, barometerAbsKpa: 1013 })).toThrow(OutOfRangeError);
  });
});

describe('moistAirDensity', () => {
  test('flags air outside the published range and still gives a value', () => {
    const cold = moistAirDensity({ barometerAbsKpa: 101.325, temperatureC: 0, humidityPct: 0 });
    expect(cold.withinPublishedRange).toBe(false);
    expect(cold.densityKgPerM3).toBeGreaterThan(1.29);
    expect(moistAirDensity(reading).withinPublishedRange).toBe(true);
  });
  test('moist air is lighter than dry air, warm air lighter than cold', () => {
    const dry = moistAirDensity({ ...reading, humidityPct: 0 }).densityKgPerM3;
    expect(moistAirDensity(reading).densityKgPerM3).toBeLessThan(dry);
    expect(moistAirDensity({ ...reading, temperatureC: 25 }).densityKgPerM3).toBeLessThan(
      moistAirDensity(reading).densityKgPerM3,
    );
  });
  test('refuses NaN, infinity and frost, where its vapour formula ends', () => {
    for (const bad of notFinite) {
      expect(() => moistAirDensity({ ...reading, temperatureC: bad })).toThrow(NotFiniteError);
    }
    expect(() => moistAirDensity({ ...reading, temperatureC: -1 })).toThrow(OutOfRangeError);
  });
});

describe('powerCorrection and dieselPowerCorrection', () => {
  test('thinner or warmer air raises every factor', () => {
    const standards: CorrectionStandard[] = [
      'sae-j1349-1990',
      'sae-j1349-2004',
      'iso-1585-spark',
      'din-70020',
    ];
    for (const standard of standards) {
      const plain = powerCorrection({ inletAbsKpa: 97, inletC: 25 }, standard).factor;
      expect(powerCorrection({ inletAbsKpa: 95, inletC: 25 }, standard).factor).toBeGreaterThan(plain);
      expect(powerCorrection({ inletAbsKpa: 97, inletC: 30 }, standard).factor).toBeGreaterThan(plain);
    }
  });
  test('says in words what lies outside the stated range', () => {
    const thin = powerCorrection({ inletAbsKpa: 85, inletC: 25 }, 'iso-1585-spark');
    expect(thin.valid).toBe(false);
    expect(thin.flags).toEqual(['factor 1.201 is outside 0.93 to 1.07']);
    const hot = powerCorrection({ inletAbsKpa: 99, inletC: 38 }, 'sae-j1349-2004');
    expect(hot.flags).toEqual(['inlet temperature 38.0 °C is outside 15 to 35 °C']);
  });
  test('a diesel factor outside 0.9 to 1.1 is not valid', () => {
    const engine = { charging: 'turbo', standard: 'un-r85', correctedFuelMg: 65 } as const;
    expect(dieselPowerCorrection({ inletAbsKpa: 80, inletC: 25 }, engine).valid).toBe(false);
    expect(dieselPowerCorrection({ inletAbsKpa: 99, inletC: 25 }, engine)).toMatchObject({
      factor: 1,
      valid: true,
    });
  });
  test('refuse NaN, infinity and unknown standards', () => {
    const engine = { charging: 'turbo', standard: 'un-r85', correctedFuelMg: 50 } as const;
    for (const bad of notFinite) {
      expect(() => powerCorrection({ inletAbsKpa: bad, inletC: 25 }, 'din-70020')).toThrow(NotFiniteError);
      expect(() => dieselPowerCorrection({ inletAbsKpa: 99, inletC: bad }, engine)).toThrow(NotFiniteError);
    }
    const air = { inletAbsKpa: 99, inletC: 25 };
    expect(() => powerCorrection(air, 'mine' as CorrectionStandard)).toThrow(OutOfRangeError);
    expect(() => dieselPowerCorrection(air, { ...engine, correctedFuelMg: 0 })).toThrow(OutOfRangeError);
  });
});

describe('expectedIdleVacuum', () => {
  test('falls with altitude about as the barometer does', () => {
    const sea = expectedIdleVacuum(0);
    const pass = expectedIdleVacuum(1500);
    expect(sea.barometerFallKpa).toBe(0);
    expect(sea.lowKpa - pass.lowKpa).toBeCloseTo(pass.barometerFallKpa, -0.3);
    expect(pass.lowKpa).toBeLessThan(pass.highKpa);
  });
  test('refuses NaN, infinity and heights without roads', () => {
    for (const bad of notFinite) expect(() => expectedIdleVacuum(bad)).toThrow(NotFiniteError);
    expect(() => expectedIdleVacuum(6000)).toThrow(OutOfRangeError);
  });
});
