import { requireNumber } from '../require-number.js';

const MINUS = '\u2212';
const MAX_FRACTION_DIGITS = 12;

/**
 * A number as a person reads it: fixed decimals, a real minus sign, never a negative zero. The same on
 * every machine: no locale takes part.
 *
 * @param value finite number
 * @param fractionDigits whole number of decimals, 0 to 12
 * @returns text such as '140', '−0.35'
 * @throws NotFiniteError, OutOfRangeError
 * @example formatNumber(-0.349, 2) // '−0.35'
 */
export function formatNumber(value: number, fractionDigits: number): string {
  requireNumber('formatNumber', 'value', value);
  requireNumber('formatNumber', 'fractionDigits', fractionDigits, {
    min: 0,
    max: MAX_FRACTION_DIGITS,
    integer: true,
  });
  const digits = Math.abs(value).toFixed(fractionDigits);
  const isZero = Number(digits) === 0;
  return value < 0 && !isZero ? MINUS + digits : digits;
}
