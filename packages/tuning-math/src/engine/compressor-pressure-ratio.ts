import { requireNumber } from '../require-number.js';
import type { AbsoluteKpa, GaugeKpa } from '../units/pressure-kinds.js';

/** Pressures along the intake, from air filter to manifold. */
export interface IntakePressures {
  readonly barometerAbsKpa: AbsoluteKpa;
  /** Boost in the manifold. */
  readonly boostKpa: GaugeKpa;
  /** Pressure lost in filter and intake pipe, kPa, 0 or more; default 0. */
  readonly filterLossKpa?: number;
  /** Pressure lost in charge cooler and its pipes, kPa, 0 or more; default 0. */
  readonly coolerLossKpa?: number;
}

/**
 * Pressure ratio that the compressor has to make, losses included. Always from absolute pressures: the same
 * boost needs more compressor at altitude.
 *
 * @returns outlet over inlet pressure, total
 * @throws NotFiniteError, OutOfRangeError where a loss leaves no pressure or boost lies below vacuum
 * Source: definition; Heywood, Internal Combustion Engine Fundamentals (1988), ch. 6.
 * @example compressorPressureRatio({ barometerAbsKpa: absoluteKpa(101.325), boostKpa: gaugeKpa(100) }) // 1.98692
 */
export function compressorPressureRatio(intake: IntakePressures): number {
  const name = 'compressorPressureRatio';
  const { barometerAbsKpa, boostKpa, filterLossKpa = 0, coolerLossKpa = 0 } = intake;
  requireNumber(name, 'barometerAbsKpa', barometerAbsKpa, { min: 30, max: 115 });
  requireNumber(name, 'boostKpa', boostKpa, { min: -barometerAbsKpa, max: 1000 });
  requireNumber(name, 'filterLossKpa', filterLossKpa, { min: 0, max: barometerAbsKpa / 2 });
  requireNumber(name, 'coolerLossKpa', coolerLossKpa, { min: 0, max: 200 });
  return (barometerAbsKpa + boostKpa + coolerLossKpa) / (barometerAbsKpa - filterLossKpa);
}
