import fc from 'fast-check';
import { describe, expect, expectTypeOf, test } from 'vitest';
import {
  ArgumentError,
  NotANumberTextError,
  NotFiniteError,
  OutOfRangeError,
  UnknownUnitError,
} from '../errors.js';
import {
  absoluteKpa,
  convertPressure,
  convertQuantity,
  convertTemperature,
  formatNumber,
  formatPressure,
  formatTemperature,
  gaugeKpa,
  parseNumber,
  parsePressure,
  parseTemperature,
  PRESSURE_UNITS,
  toAbsoluteKpa,
  toGaugeKpa,
  type AbsoluteKpa,
  type GaugeKpa,
  type PressureUnit,
} from './index.js';

fc.configureGlobal({ seed: 20261125 });

const units = Object.keys(PRESSURE_UNITS) as PressureUnit[];
const anyUnit = fc.constantFrom(...units);
const anyPressure = fc.double({ min: -1e6, max: 1e6, noNaN: true });

describe('gauge and absolute', () => {
  test('are separate types that the compiler does not mix', () => {
    expectTypeOf<GaugeKpa>().not.toExtend<AbsoluteKpa>();
    expectTypeOf<AbsoluteKpa>().not.toExtend<GaugeKpa>();
    expectTypeOf<GaugeKpa>().toExtend<number>();
  });
  test('toAbsoluteKpa adds the barometer and toGaugeKpa takes it away', () => {
    expect(toAbsoluteKpa(gaugeKpa(100), absoluteKpa(101.325))).toBe(201.325);
    expect(toGaugeKpa(absoluteKpa(200), absoluteKpa(100))).toBe(100);
  });
  test('absoluteKpa refuses a pressure below vacuum and says what is allowed', () => {
    expect(() => absoluteKpa(-0.1)).toThrow(OutOfRangeError);
    expect(() => absoluteKpa(-0.1)).toThrow('valueKpa to be a finite number from 0, got -0.1');
  });
  test('toAbsoluteKpa refuses a vacuum deeper than the barometer', () => {
    expect(() => toAbsoluteKpa(gaugeKpa(-102), absoluteKpa(101))).toThrow(OutOfRangeError);
  });
  test.each([NaN, Infinity, -Infinity])('gaugeKpa refuses %s', (value) => {
    expect(() => gaugeKpa(value)).toThrow(NotFiniteError);
    expect(() => absoluteKpa(value)).toThrow(NotFiniteError);
  });
});

describe('convertPressure', () => {
  test('there and back gives the same pressure for every pair of units', () => {
    fc.assert(
      fc.property(anyPressure, anyUnit, anyUnit, (value, from, to) => {
        const back = convertPressure(convertPressure(value, from, to), to, from);
        expect(Math.abs(back - value)).toBeLessThanOrEqual(1e-12 * Math.abs(value) + 1e-300);
      }),
    );
  });
  test('keeps order and sign', () => {
    fc.assert(
      fc.property(anyPressure, anyPressure, anyUnit, (a, b, unit) => {
        const [x, y] = [convertPressure(a, 'kPa', unit), convertPressure(b, 'kPa', unit)];
        expect(Math.sign(x - y) * Math.sign(a - b)).toBeGreaterThanOrEqual(0);
      }),
    );
  });
  test.each([NaN, Infinity, -Infinity])('refuses %s', (value) => {
    expect(() => convertPressure(value, 'kPa', 'psi')).toThrow(NotFiniteError);
  });
  test('refuses an unknown unit by naming those it knows', () => {
    expect(() => convertPressure(1, 'kPa', 'stone' as PressureUnit)).toThrow(UnknownUnitError);
    expect(() => convertPressure(1, 'kPa', 'toString' as PressureUnit)).toThrow('to be one of kPa, Pa');
  });
});

describe('convertTemperature', () => {
  test('there and back gives the same temperature', () => {
    fc.assert(
      fc.property(fc.double({ min: -273, max: 3000, noNaN: true }), (valueC) => {
        for (const unit of ['F', 'K', 'R'] as const) {
          const back = convertTemperature(convertTemperature(valueC, 'C', unit), unit, 'C');
          expect(back).toBeCloseTo(valueC, 9);
        }
      }),
    );
  });
  test('refuses what lies below absolute zero on any scale', () => {
    expect(() => convertTemperature(-273.2, 'C', 'K')).toThrow(OutOfRangeError);
    expect(() => convertTemperature(-460, 'F', 'C')).toThrow(OutOfRangeError);
    expect(() => convertTemperature(-1, 'K', 'C')).toThrow(OutOfRangeError);
    expect(convertTemperature(0, 'K', 'C')).toBe(-273.15);
  });
  test.each([NaN, Infinity, -Infinity])('refuses %s', (value) => {
    expect(() => convertTemperature(value, 'C', 'F')).toThrow(NotFiniteError);
  });
});

describe('convertQuantity', () => {
  test('turns miles an hour into kilometres an hour exactly', () => {
    expect(convertQuantity(60, { quantity: 'speed', from: 'mph', to: 'kmh' })).toBeCloseTo(96.56064, 12);
  });
  test('leaves a figure alone when both units are the same', () => {
    expect(convertQuantity(0.1, { quantity: 'power', from: 'hp', to: 'hp' })).toBe(0.1);
  });
  test('refuses NaN, infinity and unknown units', () => {
    const speed = { quantity: 'speed', from: 'mph', to: 'kmh' } as const;
    expect(() => convertQuantity(NaN, speed)).toThrow(NotFiniteError);
    expect(() => convertQuantity(Infinity, speed)).toThrow(NotFiniteError);
    expect(() => convertQuantity(1, { ...speed, to: 'knots' as 'kmh' })).toThrow(UnknownUnitError);
    expect(() => convertQuantity(1, { ...speed, quantity: 'mood' as 'speed' })).toThrow(UnknownUnitError);
  });
});

describe('formatPressure', () => {
  test('writes boost in the unit of the workshop with about 1 kPa of resolution', () => {
    expect(formatPressure(140, 'kPa')).toBe('140\u00A0kPa');
    expect(formatPressure(140, 'bar')).toBe('1.40\u00A0bar');
    expect(formatPressure(140, 'psi')).toBe('20.3\u00A0psi');
  });
  test('writes vacuum with a real minus sign and never a negative zero', () => {
    expect(formatPressure(-65, 'inHg')).toBe('\u221219.2\u00A0inHg');
    expect(formatPressure(-0.2, 'kPa')).toBe('0\u00A0kPa');
  });
  test('takes other decimals and leaves the unit off on request', () => {
    expect(formatPressure(62.14, 'kPa', { fractionDigits: 1, withUnit: false })).toBe('62.1');
  });
  test.each([NaN, Infinity, -Infinity])('refuses %s', (value) => {
    expect(() => formatPressure(value, 'kPa')).toThrow(NotFiniteError);
  });
  test('refuses decimals that are no whole number from 0 to 12', () => {
    expect(() => formatNumber(1, -1)).toThrow(OutOfRangeError);
    expect(() => formatNumber(1, 1.5)).toThrow(OutOfRangeError);
    expect(() => formatNumber(1, 13)).toThrow(OutOfRangeError);
  });
});

describe('parsePressure', () => {
  test('reads decimal point and decimal comma alike', () => {
    expect(parsePressure('1.4', 'bar')).toBeCloseTo(140, 12);
    expect(parsePressure(' 1,4 ', 'bar')).toBeCloseTo(140, 12);
    expect(parsePressure('-5', 'kPa')).toBe(-5);
    expect(parsePressure('\u22125', 'kPa')).toBe(-5);
    expect(parsePressure('.5', 'kPa')).toBe(0.5);
    expect(parsePressure('7.', 'kPa')).toBe(7);
  });
  test.each([
    ['14o', "'o' at place 3 is not part of a number"],
    ['20 psi', "' ' at place 3 is not part of a number"],
    ['1e3', "'e' at place 2 is not part of a number"],
    ['NaN', "'N' at place 1 is not part of a number"],
    ['1-4', "'-' at place 2 is not part of a number"],
    ['1,234.5', 'more than one decimal point or comma'],
    ['', 'it is empty'],
    ['   ', 'it is empty'],
    ['-', 'it has no digits'],
    [',', 'it has no digits'],
    ['9'.repeat(400), 'it is too large'],
  ])('refuses %j and names the fault', (text, fault) => {
    expect(() => parsePressure(text, 'kPa')).toThrow(NotANumberTextError);
    expect(() => parsePressure(text, 'kPa')).toThrow(fault);
  });
  test('reads back what formatPressure wrote without its unit', () => {
    fc.assert(
      fc.property(fc.double({ min: -100, max: 400, noNaN: true }), anyUnit, (valueKpa, unit) => {
        const text = formatPressure(valueKpa, unit, { fractionDigits: 6, withUnit: false });
        const halfStepKpa = PRESSURE_UNITS[unit].kpaPerUnit * 0.5e-6;
        expect(Math.abs(parsePressure(text, unit) - valueKpa)).toBeLessThanOrEqual(
          halfStepKpa * 1.001 + 1e-12,
        );
      }),
    );
  });
  test('never returns anything but a finite number, whatever is typed', () => {
    fc.assert(
      fc.property(fc.string(), (text) => {
        try {
          expect(Number.isFinite(parseNumber(text))).toBe(true);
        } catch (error) {
          expect(error).toBeInstanceOf(ArgumentError);
        }
      }),
    );
  });
});

describe('temperatures for people', () => {
  test('formatTemperature writes the scale of the workshop', () => {
    expect(formatTemperature(25, 'F')).toBe('77\u00A0°F');
    expect(formatTemperature(-40, 'C')).toBe('\u221240\u00A0°C');
  });
  test('parseTemperature reads the scale of the field and refuses letters', () => {
    expect(parseTemperature('77', 'F')).toBeCloseTo(25, 12);
    expect(() => parseTemperature('warm', 'C')).toThrow(NotANumberTextError);
    expect(() => parseTemperature('-300', 'C')).toThrow(OutOfRangeError);
  });
});
