import { requireNumber } from '../require-number.js';
import type { AbsoluteKpa } from '../units/pressure-kinds.js';

/** Gas constant of dry air, J/(kg·K). */
const AIR_GAS_CONSTANT = 287.05;

/** A four-stroke engine at one speed. */
export interface EngineBreathing {
  readonly displacementLitre: number;
  readonly engineSpeedRpm: number;
  /** Air taken in over displacement at manifold conditions, 0.1 to 1.5. */
  readonly volumetricEfficiencyRatio: number;
  readonly manifoldAbsKpa: AbsoluteKpa;
  /** Charge in the manifold, K. */
  readonly chargeK: number;
}

/**
 * Air that a four-stroke engine takes in, by speed and density.
 *
 * @returns kg/s
 * @throws NotFiniteError, OutOfRangeError
 * Source: speed-density relation, Heywood (1988), section 2.10; R of dry air 287.05 J/(kg·K).
 * @example 2.0 L at 6000 r/min, VE 1, 200 kPa absolute, 313.15 K: 0.222495 kg/s
 */
export function airMassFlow(engine: EngineBreathing): number {
  const name = 'airMassFlow';
  requireNumber(name, 'displacementLitre', engine.displacementLitre, { min: 0.05, max: 30 });
  requireNumber(name, 'engineSpeedRpm', engine.engineSpeedRpm, { min: 0, max: 20_000 });
  requireNumber(name, 'volumetricEfficiencyRatio', engine.volumetricEfficiencyRatio, { min: 0.1, max: 1.5 });
  requireNumber(name, 'manifoldAbsKpa', engine.manifoldAbsKpa, { min: 0, max: 1100 });
  requireNumber(name, 'chargeK', engine.chargeK, { min: 150, max: 900 });
  const densityKgPerM3 = (engine.manifoldAbsKpa * 1000) / (AIR_GAS_CONSTANT * engine.chargeK);
  const sweptM3PerS = (engine.displacementLitre / 1000) * (engine.engineSpeedRpm / 120);
  return engine.volumetricEfficiencyRatio * sweptM3PerS * densityKgPerM3;
}
