import { requireNumber } from '../require-number.js';

/** Air into a charge cooler and what cools it. */
export interface ChargeCooler {
  /** Air from the compressor, K. */
  readonly outletK: number;
  /** Air or water that cools it, K. */
  readonly coolantK: number;
  /** Share of the possible cooling that happens, 0 (no cooler) to 1. */
  readonly effectivenessRatio: number;
}

/**
 * Temperature of the charge after its cooler.
 *
 * @returns K
 * @throws NotFiniteError, OutOfRangeError
 * Source: definition of effectiveness, (T2 - T3) / (T2 - Tc); Heywood (1988), section 6.8.
 * @example chargeTemperature({ outletK: 391.237, coolantK: 298, effectivenessRatio: 0.7 }) // 325.97
 */
export function chargeTemperature({ outletK, coolantK, effectivenessRatio }: ChargeCooler): number {
  requireNumber('chargeTemperature', 'outletK', outletK, { min: 150, max: 900 });
  requireNumber('chargeTemperature', 'coolantK', coolantK, { min: 150, max: 500 });
  requireNumber('chargeTemperature', 'effectivenessRatio', effectivenessRatio, { min: 0, max: 1 });
  return outletK - effectivenessRatio * (outletK - coolantK);
}
