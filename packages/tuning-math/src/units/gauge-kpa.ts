import { requireNumber } from '../require-number.js';
import type { GaugeKpa } from './pressure-kinds.js';

/**
 * Marks a number as a gauge pressure: kPa above the surrounding air, negative for vacuum.
 * Use it where a value enters from a log, a form or a record whose frame is known.
 *
 * @param valueKpa finite kPa
 * @returns the same number, as GaugeKpa
 * @throws NotFiniteError
 * @example gaugeKpa(140) // 140
 */
export function gaugeKpa(valueKpa: number): GaugeKpa {
  return requireNumber('gaugeKpa', 'valueKpa', valueKpa) as GaugeKpa;
}
