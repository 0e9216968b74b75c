import { convertPressure } from './convert-pressure.js';
import { formatNumber } from './format-number.js';
import { formatPressure } from './format-pressure.js';
import type { PressureUnit } from './pressure-units.js';

/** Farther than any figure is rounded, and how finely the next one is looked for, kPa. */
const FARTHEST_KPA = 4;
const STEP_KPA = 0.05;
/** What is lost in converting is no pressure. */
const EQUAL_KPA = 1e-9;

/**
 * A bound as a person reads it, rounded to its safe side, so that who sets just what is written keeps to it: 136 kPa
 * or more is 19.8 psi or more, although 19.7 psi is nearer.
 *
 * @param boundKpa finite kPa
 * @param side what is allowed: the bound and more, or the bound and less
 * @returns the figure without its unit
 * @throws NotFiniteError, UnknownUnitError
 */
export function formatPressureBound(boundKpa: number, unit: PressureUnit, side: 'more' | 'less'): string {
  const sign = side === 'more' ? 1 : -1;
  if (unit === 'kPa') return inTenths(boundKpa, sign);
  for (let offKpa = 0; offKpa <= FARTHEST_KPA; offKpa += STEP_KPA) {
    const text = formatPressure(boundKpa + sign * offKpa, unit, { withUnit: false });
    const readKpa = convertPressure(Number(text.replace('−', '-')), unit, 'kPa');
    if (sign * (readKpa - boundKpa) >= -EQUAL_KPA) return text;
  }
  return formatPressure(boundKpa, unit, { withUnit: false });
}

/** Nothing is converted, so a tenth of a kPa need not be given away. */
function inTenths(boundKpa: number, sign: number): string {
  const tenths = sign * Math.ceil(sign * boundKpa * 10 - EQUAL_KPA);
  return formatNumber(tenths / 10, tenths % 10 === 0 ? 0 : 1);
}
