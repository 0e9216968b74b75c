import { OutOfRangeError } from '../errors.js';
import { requireNumber } from '../require-number.js';

/** Published formulas of saturation vapour pressure over water. */
export type VapourFormula = 'wmo-magnus' | 'sonntag' | 'cipm-2007' | 'buck-1996';

/** A formula with the range of temperature that it is stated or used for, °C. */
interface VapourFacts {
  readonly minC: number;
  readonly maxC: number;
  readonly pascal: (temperatureC: number) => number;
}

const KELVIN = 273.15;

const FORMULAS: Readonly<Record<VapourFormula, VapourFacts>> = {
  'wmo-magnus': { minC: -45, maxC: 60, pascal: (t) => 611.2 * Math.exp((17.62 * t) / (243.12 + t)) },
  sonntag: { minC: 0, maxC: 100, pascal: (t) => sonntag(t + KELVIN) },
  'cipm-2007': { minC: 0, maxC: 60, pascal: (t) => cipm(t + KELVIN) },
  'buck-1996': {
    minC: -45,
    maxC: 60,
    pascal: (t) => 611.21 * Math.exp(((18.678 - t / 234.5) * t) / (257.14 + t)),
  },
};

/**
 * Saturation vapour pressure of water: the most that moist air of that temperature can hold. The formulas
 * differ by up to 0.3 % at 20 to 30 °C, so the name of the one used belongs to the answer.
 *
 * @param temperatureC °C, within the range of the formula (-45 to 60; 0 to 60 or 100 for two of them)
 * @param formula by default the WMO Magnus form
 * @returns absolute kPa over a plane surface of pure water
 * @throws NotFiniteError; OutOfRangeError outside the formula's range or for an unknown formula
 * Source: WMO-No. 8 (2008) Annex 4.B; Sonntag (1990); Picard et al., Metrologia 45 (2008) 149-155;
 * Buck (1996, from memory).
 * @example vapourPressure(20) // 2.3326
 */
export function vapourPressure(temperatureC: number, formula: VapourFormula = 'wmo-magnus'): number {
  if (!Object.hasOwn(FORMULAS, formula)) {
    const allowed = `to be one of ${Object.keys(FORMULAS).join(', ')}`;
    throw new OutOfRangeError('vapourPressure', { argument: 'formula', value: formula, allowed });
  }
  const { minC, maxC, pascal } = FORMULAS[formula];
  requireNumber('vapourPressure', 'temperatureC', temperatureC, { min: minC, max: maxC });
  return pascal(temperatureC) / 1000;
}

function sonntag(temperatureK: number): number {
  return Math.exp(
    -6096.9385 / temperatureK +
      21.2409642 -
      2.711193e-2 * temperatureK +
      1.673952e-5 * temperatureK ** 2 +
      2.433502 * Math.log(temperatureK),
  );
}

function cipm(temperatureK: number): number {
  return Math.exp(
    1.2378847e-5 * temperatureK ** 2 - 1.9121316e-2 * temperatureK + 33.93711047 - 6.3431645e3 / temperatureK,
  );
}
