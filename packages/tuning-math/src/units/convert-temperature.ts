import { requireNumber } from '../require-number.js';
import { requireUnit } from './require-unit.js';

interface TemperatureScale {
  readonly symbol: string;
  readonly fractionDigits: number;
  /** Size of one degree in kelvin, and the scale's reading at 0 °C. */
  readonly kelvinPerDegree: number;
  readonly atIcePoint: number;
}

/** Temperature scales by name. K = °C + 273.15, °F = 1.8 °C + 32, °R = °F + 459.67, all exact (NIST SP 811). */
export const TEMPERATURE_UNITS = {
  C: { symbol: '°C', fractionDigits: 0, kelvinPerDegree: 1, atIcePoint: 0 },
  F: { symbol: '°F', fractionDigits: 0, kelvinPerDegree: 1 / 1.8, atIcePoint: 32 },
  K: { symbol: 'K', fractionDigits: 0, kelvinPerDegree: 1, atIcePoint: 273.15 },
  R: { symbol: '°R', fractionDigits: 0, kelvinPerDegree: 1 / 1.8, atIcePoint: 491.67 },
} as const satisfies Record<string, TemperatureScale>;

/** Name of a temperature scale: a key of `TEMPERATURE_UNITS`. */
export type TemperatureUnit = keyof typeof TEMPERATURE_UNITS;

const ABSOLUTE_ZERO_C = -273.15;

/**
 * The same temperature on another scale (not for differences of temperature).
 *
 * @param value finite temperature on scale `from`, not below absolute zero
 * @returns the temperature on scale `to`
 * @throws NotFiniteError; OutOfRangeError below absolute zero; UnknownUnitError
 * Source: NIST SP 811 (2008), Appendix B.8.
 * @example convertTemperature(25, 'C', 'F') // 77
 */
export function convertTemperature(value: number, from: TemperatureUnit, to: TemperatureUnit): number {
  requireNumber('convertTemperature', 'value', value);
  requireUnit('convertTemperature', 'from', from, TEMPERATURE_UNITS);
  requireUnit('convertTemperature', 'to', to, TEMPERATURE_UNITS);
  const [source, target] = [TEMPERATURE_UNITS[from], TEMPERATURE_UNITS[to]];
  const lowest = source.atIcePoint + ABSOLUTE_ZERO_C / source.kelvinPerDegree;
  requireNumber('convertTemperature', 'value', value, { min: lowest });
  if (from === to) return value;
  return ((value - source.atIcePoint) * source.kelvinPerDegree) / target.kelvinPerDegree + target.atIcePoint;
}
