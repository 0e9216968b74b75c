import { requireNumber } from '../require-number.js';
import type { AbsoluteKpa } from './pressure-kinds.js';

/**
 * Marks a number as an absolute pressure: kPa above perfect vacuum.
 * Use it where a barometer or a manifold sensor that reads absolute enters the computation.
 *
 * @param valueKpa finite kPa, 0 or more
 * @returns the same number, as AbsoluteKpa
 * @throws NotFiniteError, OutOfRangeError below 0
 * @example absoluteKpa(101.325) // 101.325
 */
export function absoluteKpa(valueKpa: number): AbsoluteKpa {
  return requireNumber('absoluteKpa', 'valueKpa', valueKpa, { min: 0 }) as AbsoluteKpa;
}
