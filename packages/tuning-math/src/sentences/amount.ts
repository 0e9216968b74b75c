import { requireNumber } from '../require-number.js';
import type { Amount } from './sentence-types.js';

/**
 * A number for a sentence, rounded to what the sentence says of it.
 *
 * @param value finite, in `unit`
 * @param fractionDigits decimals at most, 0 to 12; one by default, which for a pressure is a tenth of a kPa
 * @throws NotFiniteError, OutOfRangeError
 * @example amount(139.96, 'kPa') // { value: 140, unit: 'kPa' }
 */
export function amount(value: number, unit: Amount['unit'], fractionDigits = 1): Amount {
  requireNumber('amount', 'value', value);
  requireNumber('amount', 'fractionDigits', fractionDigits, { min: 0, max: 12, integer: true });
  // No negative zero: it would be written with a minus sign.
  return { value: Number(value.toFixed(fractionDigits)) + 0, unit };
}
