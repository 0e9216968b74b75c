import { requireNumber } from '../require-number.js';
import { PRESSURE_UNITS, type PressureUnit } from './pressure-units.js';
import { requireUnit } from './require-unit.js';

/**
 * The same pressure in another unit. Gauge stays gauge and absolute stays absolute: only the size of
 * the unit changes. For use at the edges; inside everything is kPa.
 *
 * @param value finite pressure in unit `from`
 * @returns the pressure in unit `to`, from exact factors
 * @throws NotFiniteError; UnknownUnitError for a unit that is not a key of PRESSURE_UNITS
 * Source: NIST SP 811 (2008), Appendix B; see PRESSURE_UNITS.
 * @example convertPressure(20, 'psi', 'bar') // 1.378951...
 */
export function convertPressure(value: number, from: PressureUnit, to: PressureUnit): number {
  requireNumber('convertPressure', 'value', value);
  requireUnit('convertPressure', 'from', from, PRESSURE_UNITS);
  requireUnit('convertPressure', 'to', to, PRESSURE_UNITS);
  if (from === to) return value;
  return (value * PRESSURE_UNITS[from].kpaPerUnit) / PRESSURE_UNITS[to].kpaPerUnit;
}
