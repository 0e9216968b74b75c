import { requireNumber } from '../require-number.js';
import type { CorrectionAir } from './power-correction.js';

/** How the air reaches a compression-ignition engine. */
export type DieselCharging = 'aspirated' | 'turbo' | 'turbo-liquid-cooled';

/** Which published pair of exponents serves a turbocharged engine. */
export type DieselStandard = 'un-r85' | 'iso-1585';

/** The measured compression-ignition engine. */
export interface DieselEngine {
  readonly charging: DieselCharging;
  readonly standard: DieselStandard;
  /** Fuel per litre of displacement and cycle over the boost pressure ratio, mg/(L·cycle), above 0. */
  readonly correctedFuelMg: number;
}

/** Factor of a compression-ignition engine, with its parts. */
export interface DieselCorrection {
  readonly factor: number;
  readonly atmosphericFactor: number;
  readonly engineFactor: number;
  /** Whether the factor lies in the stated 0.9 to 1.1. */
  readonly valid: boolean;
}

/**
 * Factor that brings the measured power of a compression-ignition engine to 99 kPa dry and 25 °C:
 * atmospheric factor to the power of the engine factor.
 *
 * @throws NotFiniteError, OutOfRangeError
 * Source: ISO 1585 / UN R85, alpha = fa^fm, fm = 0.036 qc - 1.14; the aspirated pair and (99/p)^0.7
 * (T/298)^1.5 are also printed in 30 CFR 7.87; the exponents 1.2 and 0.7 of ISO 1585 and the ends of fm
 * (0.2 below 37.2, 0.3 below 40, 1.2 above 65) are from memory.
 */
export function dieselPowerCorrection(air: CorrectionAir, engine: DieselEngine): DieselCorrection {
  requireNumber('dieselPowerCorrection', 'inletAbsKpa', air.inletAbsKpa, { min: 50, max: 115 });
  requireNumber('dieselPowerCorrection', 'inletC', air.inletC, { min: -45, max: 60 });
  requireNumber('dieselPowerCorrection', 'correctedFuelMg', engine.correctedFuelMg, {
    min: 0,
    exclusive: true,
  });
  const [pressurePower, temperaturePower] = exponents(engine);
  const atmosphericFactor =
    (99 / air.inletAbsKpa) ** pressurePower * ((air.inletC + 273) / 298) ** temperaturePower;
  const engineFactor = fuelFactor(engine);
  const factor = atmosphericFactor ** engineFactor;
  return { factor, atmosphericFactor, engineFactor, valid: factor >= 0.9 && factor <= 1.1 };
}

function exponents({ charging, standard }: DieselEngine): readonly [number, number] {
  if (charging === 'aspirated') return [1, 0.7];
  if (standard === 'un-r85') return [0.7, 1.5];
  return charging === 'turbo-liquid-cooled' ? [0.7, 0.7] : [0.7, 1.2];
}

function fuelFactor({ correctedFuelMg, standard }: DieselEngine): number {
  const [from, below] = standard === 'un-r85' ? [40, 0.3] : [37.2, 0.2];
  if (correctedFuelMg < from) return below;
  if (correctedFuelMg > 65) return 1.2;
  return 0.036 * correctedFuelMg - 1.14;
}
