import { expect } from 'vitest';
import {
  absoluteKpa,
  compressorPressureRatio,
  convertPressure,
  convertQuantity,
  convertTemperature,
  gaugeKpa,
  standardAtmosphere,
  type PressureUnit,
} from '@pullbook/tuning-math';
import { expectPrinted } from './expect-printed.js';
import { outsideCheck, type CheckOrigin } from './outside-check.js';

const SP811 = 'NIST SP 811 (2008), Appendix B';
const printedFactors: readonly (readonly [PressureUnit, string, string, string])[] = [
  ['psi', 'kPa in a pound-force per square inch', '6.894 757', '6.894757293168361'],
  ['bar', 'kPa in a bar', '100', '100'],
  ['atm', 'kPa in a standard atmosphere', '101.325', '101.325'],
  ['kgfPerCm2', 'kPa in a kilogram-force per square centimetre', '98.066 5', '98.0665'],
  ['inHg', 'kPa in a conventional inch of mercury', '3.386 389', '3.386388640341'],
  ['mmHg', 'kPa in a conventional millimetre of mercury', '0.133 322 4', '0.133322387415'],
  ['torr', 'kPa in a torr', '0.133 322 4', '0.133322368421'],
  ['inH2O', 'kPa in a conventional inch of water', '0.249 088 9', '0.24908891'],
];
/** The mercury factors were read in print; the printed form of the others follows from the exact definitions. */
const originOf = (unit: PressureUnit): CheckOrigin =>
  unit === 'inHg' || unit === 'mmHg' ? 'published' : 'recomputed';
for (const [unit, checks, printed, exact] of printedFactors) {
  outsideCheck({ id: `units/${unit}`, checks, source: SP811, origin: originOf(unit) }, () => {
    expectPrinted(convertPressure(1, unit, 'kPa'), printed);
    expectPrinted(convertPressure(1, unit, 'kPa'), exact);
  });
}

outsideCheck(
  {
    id: 'units/pressure-points',
    checks: 'common boost figures from psi to kPa and bar',
    source: SP811,
    origin: 'recomputed',
  },
  () => {
    for (const [psi, kpa] of [
      [7, '48.263301'],
      [10, '68.947573'],
      [20, '137.895146'],
      [30, '206.842719'],
    ] as const) {
      expectPrinted(convertPressure(psi, 'psi', 'kPa'), kpa);
    }
    expectPrinted(convertPressure(20, 'psi', 'bar'), '1.378951');
    expectPrinted(convertPressure(1, 'bar', 'psi'), '14.503773773');
    expectPrinted(convertPressure(1, 'atm', 'psi'), '14.695948776');
    expectPrinted(convertPressure(1, 'atm', 'inHg'), '29.921');
    expectPrinted(convertPressure(29.92, 'inHg', 'kPa'), '101.3207');
    expectPrinted(convertPressure(99, 'kPa', 'inHg'), '29.2347');
  },
);

outsideCheck(
  {
    id: 'units/temperature',
    checks: 'fixed points between °C, °F, K and °R',
    source: SP811,
    origin: 'exact',
  },
  () => {
    expect(convertTemperature(25, 'C', 'F')).toBeCloseTo(77, 12);
    expect(convertTemperature(25, 'C', 'K')).toBe(298.15);
    expect(convertTemperature(59, 'F', 'C')).toBeCloseTo(15, 12);
    expect(convertTemperature(59, 'F', 'K')).toBeCloseTo(288.15, 12);
    expect(convertTemperature(59, 'F', 'R')).toBeCloseTo(518.67, 12);
    expect(convertTemperature(-40, 'C', 'F')).toBeCloseTo(-40, 12);
  },
);

outsideCheck(
  {
    id: 'units/other-quantities',
    checks: 'flow, power, torque and speed factors',
    source: SP811,
    origin: 'exact',
  },
  () => {
    expectPrinted(
      convertQuantity(1, { quantity: 'massFlow', from: 'lbPerMin', to: 'kgPerS' }),
      '0.007559872833',
    );
    expectPrinted(
      convertQuantity(1, { quantity: 'volumeFlow', from: 'ft3PerMin', to: 'm3PerS' }),
      '4.719474432e-4',
    );
    expectPrinted(convertQuantity(1, { quantity: 'power', from: 'hp', to: 'W' }), '745.699871582');
    expectPrinted(convertQuantity(1, { quantity: 'power', from: 'metricHp', to: 'W' }), '735.49875');
    expectPrinted(convertQuantity(1, { quantity: 'torque', from: 'lbfFt', to: 'nm' }), '1.355817948331');
    expectPrinted(convertQuantity(1, { quantity: 'speed', from: 'mph', to: 'mPerS' }), '0.44704');
  },
);

outsideCheck(
  {
    id: 'units/gauge-and-absolute',
    checks: 'pressure ratio of 100 kPa gauge at sea level, 1000 m and 2000 m',
    source: 'definition of gauge pressure with the U.S. Standard Atmosphere 1976',
    origin: 'recomputed',
  },
  () => {
    const ratioAt = (altitudeM: number): number =>
      compressorPressureRatio({
        barometerAbsKpa: standardAtmosphere(altitudeM).pressureAbsKpa,
        boostKpa: gaugeKpa(100),
      });
    expectPrinted(ratioAt(0), '1.98692');
    expectPrinted(ratioAt(1000), '2.11266');
    expectPrinted(ratioAt(2000), '2.25794');
    expectPrinted(
      compressorPressureRatio({ barometerAbsKpa: absoluteKpa(101.325), boostKpa: gaugeKpa(100) }),
      '1.98692',
    );
  },
);
