import { convertTemperature, type TemperatureUnit } from './convert-temperature.js';
import { parseNumber } from './parse-number.js';

/**
 * The temperature that a person typed into a field whose scale is known.
 *
 * @param text digits with at most one decimal point or comma, a sign in front if need be
 * @returns °C
 * @throws NotANumberTextError whose `allowed` names the fault; OutOfRangeError below absolute zero;
 *   UnknownUnitError
 * @example parseTemperature('77', 'F') // 25
 */
export function parseTemperature(text: string, unit: TemperatureUnit): number {
  return convertTemperature(parseNumber(text, 'parseTemperature'), unit, 'C');
}
