import { findRoot } from '../numerics/find-root.js';
import { requireNumber } from '../require-number.js';
import { gaugeKpa } from '../units/gauge-kpa.js';
import type { GaugeKpa } from '../units/pressure-kinds.js';
import { chargePath, type ChargePathInputs } from './charge-path.js';
import { fuelMassFlow } from './fuel-mass-flow.js';
import { injectorDuty, type InjectorLoad } from './injector-duty.js';

/** The way of the air at the engine speed that asks most of the injectors, with mixture and injectors. */
export interface InjectorDutyLimit extends Omit<ChargePathInputs, 'intake'> {
  readonly intake: Omit<ChargePathInputs['intake'], 'boostKpa'>;
  readonly airFuelRatio: number;
  readonly injectors: Omit<InjectorLoad, 'fuelKgPerS'>;
  /** Highest duty to run them at, %; 85 is common practice. */
  readonly highestDutyPct: number;
}

const HIGHEST_KPA = 400;
const TOLERANCE_KPA = 0.01;

/**
 * Boost at which the injectors reach their highest allowed duty, with the charge temperature that this boost
 * makes: unlike `boostAtInjectorLimit`, which holds the charge temperature.
 *
 * @returns gauge kPa from 0 to 400; 0 where they do not even serve the engine unblown, null where they are not
 *   reached up to 400 kPa
 * @throws NotFiniteError, OutOfRangeError
 * Cost: about 15 runs of `chargePath`.
 * Source: `chargePath` and `injectorDuty`, solved for boost (Brent).
 */
export function boostAtInjectorDuty(limit: InjectorDutyLimit): GaugeKpa | null {
  const { highestDutyPct, airFuelRatio, injectors } = limit;
  requireNumber('boostAtInjectorDuty', 'highestDutyPct', highestDutyPct, { min: 1, max: 100 });
  const dutyPast = (boost: number): number => {
    const path = chargePath({ ...limit, intake: { ...limit.intake, boostKpa: gaugeKpa(boost) } });
    const fuelKgPerS = fuelMassFlow(path.airKgPerS, airFuelRatio);
    return injectorDuty({ ...injectors, fuelKgPerS }) - highestDutyPct;
  };
  if (dutyPast(0) >= 0) return gaugeKpa(0);
  if (dutyPast(HIGHEST_KPA) < 0) return null;
  return gaugeKpa(findRoot(dutyPast, { low: 0, high: HIGHEST_KPA, tolerance: TOLERANCE_KPA }).x);
}
