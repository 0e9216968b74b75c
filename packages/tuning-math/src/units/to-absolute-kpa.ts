import { requireNumber } from '../require-number.js';
import { absoluteKpa } from './absolute-kpa.js';
import type { AbsoluteKpa, GaugeKpa } from './pressure-kinds.js';

/**
 * Absolute pressure of a gauge reading: what the boost gauge shows plus the barometer.
 *
 * @param pressureKpa gauge kPa
 * @param barometerAbsKpa pressure of the surrounding air at the same place, absolute kPa above 0
 * @returns absolute kPa
 * @throws NotFiniteError, OutOfRangeError where the sum would lie below vacuum
 * @example toAbsoluteKpa(gaugeKpa(100), absoluteKpa(101.325)) // 201.325
 */
export function toAbsoluteKpa(pressureKpa: GaugeKpa, barometerAbsKpa: AbsoluteKpa): AbsoluteKpa {
  requireNumber('toAbsoluteKpa', 'barometerAbsKpa', barometerAbsKpa, { min: 0 });
  requireNumber('toAbsoluteKpa', 'pressureKpa', pressureKpa, { min: -barometerAbsKpa });
  return absoluteKpa(pressureKpa + barometerAbsKpa);
}
