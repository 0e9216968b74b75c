import { requireNumber } from '../require-number.js';

/** One running point of a compressor. */
export interface CompressorPoint {
  /** Inlet temperature, K, above 0. */
  readonly inletK: number;
  /** Outlet over inlet pressure, absolute, 1 to 10. */
  readonly pressureRatio: number;
  /** Isentropic efficiency, total to total, above 0 up to 1. */
  readonly efficiencyRatio: number;
  /** Ratio of specific heats; 1.4 (cold air) by default. */
  readonly heatCapacityRatio?: number;
}

/**
 * Temperature of the air as it leaves the compressor.
 *
 * @returns K
 * @throws NotFiniteError, OutOfRangeError
 * Source: Heywood, Internal Combustion Engine Fundamentals (1988), eqs 6.39-6.42 (numbers from memory).
 * @example compressorOutletTemperature({ inletK: 298, pressureRatio: 2, efficiencyRatio: 0.7 }) // 391.237
 */
export function compressorOutletTemperature(point: CompressorPoint): number {
  const name = 'compressorOutletTemperature';
  const { inletK, pressureRatio, efficiencyRatio, heatCapacityRatio = 1.4 } = point;
  requireNumber(name, 'inletK', inletK, { min: 150, max: 400 });
  requireNumber(name, 'pressureRatio', pressureRatio, { min: 1, max: 10 });
  requireNumber(name, 'efficiencyRatio', efficiencyRatio, { min: 0.05, max: 1 });
  requireNumber(name, 'heatCapacityRatio', heatCapacityRatio, { min: 1.2, max: 1.67 });
  const exponent = (heatCapacityRatio - 1) / heatCapacityRatio;
  return inletK * (1 + (pressureRatio ** exponent - 1) / efficiencyRatio);
}
