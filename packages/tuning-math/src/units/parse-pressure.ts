import { convertPressure } from './convert-pressure.js';
import { parseNumber } from './parse-number.js';
import type { PressureUnit } from './pressure-units.js';

/**
 * The pressure that a person typed into a field whose unit is known. Decimal point and comma both count;
 * anything else is refused in words that a form can show.
 *
 * @param text digits with at most one decimal point or comma, a sign in front if need be
 * @param unit unit of the field
 * @returns kPa, in the frame (gauge or absolute) that the field has
 * @throws NotANumberTextError whose `allowed` names the fault; UnknownUnitError
 * @example parsePressure('1,4', 'bar') // 140
 */
export function parsePressure(text: string, unit: PressureUnit): number {
  return convertPressure(parseNumber(text, 'parsePressure'), unit, 'kPa');
}
