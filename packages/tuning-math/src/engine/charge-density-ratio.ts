import { requireNumber } from '../require-number.js';

/** Charge in the manifold against the air outside. */
export interface ChargeState {
  /** Manifold over ambient pressure, both absolute. */
  readonly pressureRatio: number;
  readonly ambientK: number;
  readonly chargeK: number;
}

/**
 * How many times denser the charge is than the air outside: what boost is worth to the engine.
 *
 * @returns density of the charge over density of the ambient air
 * @throws NotFiniteError, OutOfRangeError
 * Source: ideal gas law.
 * @example chargeDensityRatio({ pressureRatio: 2, ambientK: 298, chargeK: 325.97 }) // 1.8284
 */
export function chargeDensityRatio({ pressureRatio, ambientK, chargeK }: ChargeState): number {
  requireNumber('chargeDensityRatio', 'pressureRatio', pressureRatio, { min: 0, max: 10 });
  requireNumber('chargeDensityRatio', 'ambientK', ambientK, { min: 150, max: 400 });
  requireNumber('chargeDensityRatio', 'chargeK', chargeK, { min: 150, max: 900 });
  return (pressureRatio * ambientK) / chargeK;
}
