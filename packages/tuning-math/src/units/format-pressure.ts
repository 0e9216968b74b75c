import { convertPressure } from './convert-pressure.js';
import { formatNumber } from './format-number.js';
import { PRESSURE_UNITS, type PressureUnit } from './pressure-units.js';

/** How to write a quantity for a person. */
export interface FormatOptions {
  /** Decimals; by default what the unit needs for boost (about 1 kPa). */
  readonly fractionDigits?: number;
  /** Whether the unit stands after the figure; by default it does. */
  readonly withUnit?: boolean;
}

/**
 * A pressure as a person reads it in the workshop's unit, with sensible digits: '140 kPa', '1.40 bar',
 * '20.3 psi'.
 *
 * @param pressureKpa finite kPa, gauge or absolute
 * @returns figure and unit with a no-break space between them
 * @throws NotFiniteError, UnknownUnitError, OutOfRangeError for decimals outside 0 to 12
 * @example formatPressure(140, 'bar') // '1.40 bar'
 */
export function formatPressure(pressureKpa: number, unit: PressureUnit, options: FormatOptions = {}): string {
  const value = convertPressure(pressureKpa, 'kPa', unit);
  const { fractionDigits = PRESSURE_UNITS[unit].fractionDigits, withUnit = true } = options;
  const figure = formatNumber(value, fractionDigits);
  return withUnit ? `${figure}\u00A0${PRESSURE_UNITS[unit].symbol}` : figure;
}
