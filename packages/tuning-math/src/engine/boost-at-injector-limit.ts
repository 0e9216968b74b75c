import { requireNumber } from '../require-number.js';
import type { AbsoluteKpa, GaugeKpa } from '../units/pressure-kinds.js';
import { absoluteKpa } from '../units/absolute-kpa.js';
import { gaugeKpa } from '../units/gauge-kpa.js';
import { airMassFlow, type EngineBreathing } from './air-mass-flow.js';
import { injectorCapacity, type InjectorLoad } from './injector-duty.js';

/** Engine, mixture and injectors at the engine speed that asks most of them. */
export interface InjectorLimit {
  readonly engine: Omit<EngineBreathing, 'manifoldAbsKpa'>;
  readonly airFuelRatio: number;
  readonly injectors: Omit<InjectorLoad, 'fuelKgPerS'>;
  /** Highest duty to run them at, %; 85 is common practice. */
  readonly highestDutyPct: number;
  readonly barometerAbsKpa: AbsoluteKpa;
}

/**
 * Boost at which the injectors reach their highest allowed duty, for a rail that follows boost (constant
 * pressure difference) and a charge temperature that is held.
 *
 * @returns gauge kPa; may lie below 0, which says that the injectors do not even serve the engine unblown
 * @throws NotFiniteError, OutOfRangeError
 * Source: speed-density and orifice relations of `airMassFlow` and `injectorDuty`, solved for pressure.
 */
export function boostAtInjectorLimit(limit: InjectorLimit): GaugeKpa {
  const name = 'boostAtInjectorLimit';
  requireNumber(name, 'airFuelRatio', limit.airFuelRatio, { min: 3, max: 60 });
  requireNumber(name, 'highestDutyPct', limit.highestDutyPct, { min: 1, max: 100 });
  requireNumber(name, 'barometerAbsKpa', limit.barometerAbsKpa, { min: 30, max: 115 });
  requireNumber(name, 'engine.engineSpeedRpm', limit.engine.engineSpeedRpm, { min: 1 });
  const fuelKgPerS = (limit.highestDutyPct / 100) * injectorCapacity(limit.injectors);
  const airPerKpa = airMassFlow({ ...limit.engine, manifoldAbsKpa: absoluteKpa(1) });
  return gaugeKpa((fuelKgPerS * limit.airFuelRatio) / airPerKpa - limit.barometerAbsKpa);
}
