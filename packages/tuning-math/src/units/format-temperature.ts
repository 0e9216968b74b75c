import { convertTemperature, TEMPERATURE_UNITS, type TemperatureUnit } from './convert-temperature.js';
import { formatNumber } from './format-number.js';
import type { FormatOptions } from './format-pressure.js';

/**
 * A temperature as a person reads it: '25 °C', '77 °F'.
 *
 * @param temperatureC °C, not below absolute zero
 * @returns figure and unit with a no-break space between them
 * @throws NotFiniteError, OutOfRangeError, UnknownUnitError
 * @example formatTemperature(25, 'F') // '77 °F'
 */
export function formatTemperature(
  temperatureC: number,
  unit: TemperatureUnit,
  options: FormatOptions = {},
): string {
  const value = convertTemperature(temperatureC, 'C', unit);
  const { fractionDigits = TEMPERATURE_UNITS[unit].fractionDigits, withUnit = true } = options;
  const figure = formatNumber(value, fractionDigits);
  return withUnit ? `${figure}\u00A0${TEMPERATURE_UNITS[unit].symbol}` : figure;
}
