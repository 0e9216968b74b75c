import { describe, expect, test } from 'vitest';
import { DEFAULT_PULL_SETTINGS, readLog } from '../log/index.js';
import { baseUnitOf } from './base-unit-of.js';
import { channelUnit } from './channel-unit.js';
import { filteredBoost } from './filtered-boost.js';

describe('channelUnit(base, person)', () => {
  const shown = (base: 'kPa' | 'C', value: number, person: Parameters<typeof channelUnit>[1]): number => {
    const { scale, offset } = channelUnit(base, person);
    return value * scale + offset;
  };
  test('turns kPa and °C into the units of the person', () => {
    // 1 psi = 6.894 757 kPa; 100 °C = 212 °F: NIST SP 811 (2008), Appendix B.8.
    expect(shown('kPa', 6.894757, { pressure: 'psi', temperature: 'C' })).toBeCloseTo(1, 6);
    expect(shown('kPa', 140, { pressure: 'bar', temperature: 'C' })).toBeCloseTo(1.4, 12);
    expect(shown('C', 100, { pressure: 'kPa', temperature: 'F' })).toBeCloseTo(212, 12);
    expect(channelUnit('C', { pressure: 'kPa', temperature: 'F' }).word).toBe('°F');
  });
});

describe('baseUnitOf(channel)', () => {
  test('is that of the quantity, else that of the printed unit, else none', () => {
    expect(baseUnitOf({ quantity: 'boost-pressure', unit: 'psi' })).toBe('kPa');
    expect(baseUnitOf({ quantity: 'throttle', unit: 'V' })).toBe('pct');
    expect(baseUnitOf({ quantity: 'unknown', unit: 'bar' })).toBe('kPa');
    expect(baseUnitOf({ quantity: 'unknown', unit: 'F' })).toBe('C');
    expect(baseUnitOf({ quantity: 'unknown', unit: 'mV' })).toBe('V');
    expect(baseUnitOf({ quantity: 'unknown', unit: 'none' })).toBe('none');
  });
});

describe('filteredBoost(samples, pulls, settings)', () => {
  const timeS = Float64Array.from({ length: 400 }, (_, row) => row / 50);
  const boost = Float32Array.from(timeS, (time) => 20 + 3 * time + time * time);

  test('leaves a parabola as it is, inside the pulls, and is silent outside', () => {
    const samples = { timeS, columns: new Map([['boost-pressure', boost] as const]) };
    const filtered = filteredBoost(samples, [{ startS: 2, endS: 5 }], DEFAULT_PULL_SETTINGS);
    // Savitzky and Golay (Anal. Chem. 36, 1964): a quadratic filter keeps quadratics.
    for (const row of [75, 100, 175, 250]) expect(filtered[row]).toBeCloseTo(boost[row] ?? NaN, 3);
    for (const row of [0, 74, 251, 399]) expect(filtered[row]).toBeNaN();
  });
});

describe('readLog(input, { keptColumns })', () => {
  const log = 'Time (s),Boost (kPa),RPM,Gizmo,IAT (°F),IAT 2 (°F)\n0,1,1000,7,50,86\n0.1,2,1100,8,50,95\n';
  test('keeps the columns that are asked for, unknown ones too, and always the pressures', () => {
    const { byPosition, columns } = readLog(log, { keptColumns: new Set([3, 5]) });
    expect([...byPosition.keys()].sort()).toEqual([1, 3, 5]);
    expect([...(byPosition.get(3) ?? [])]).toEqual([7, 8]);
    expect([...(byPosition.get(5) ?? [])]).toEqual([30, 35]);
    expect(columns.has('engine-speed')).toBe(false);
  });
});
