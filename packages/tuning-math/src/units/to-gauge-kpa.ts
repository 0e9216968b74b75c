import { requireNumber } from '../require-number.js';
import { gaugeKpa } from './gauge-kpa.js';
import type { AbsoluteKpa, GaugeKpa } from './pressure-kinds.js';

/**
 * Gauge reading of an absolute pressure: what is above (or, negative, below) the barometer.
 *
 * @param pressureAbsKpa absolute kPa, 0 or more
 * @param barometerAbsKpa pressure of the surrounding air at the same place, absolute kPa, 0 or more
 * @returns gauge kPa
 * @throws NotFiniteError, OutOfRangeError
 * @example toGaugeKpa(absoluteKpa(200), absoluteKpa(100)) // 100
 */
export function toGaugeKpa(pressureAbsKpa: AbsoluteKpa, barometerAbsKpa: AbsoluteKpa): GaugeKpa {
  requireNumber('toGaugeKpa', 'pressureAbsKpa', pressureAbsKpa, { min: 0 });
  requireNumber('toGaugeKpa', 'barometerAbsKpa', barometerAbsKpa, { min: 0 });
  return gaugeKpa(pressureAbsKpa - barometerAbsKpa);
}
