import { requireNumber } from '../require-number.js';
import { QUANTITY_UNITS, type Quantity, type QuantityUnit } from './quantity-units.js';
import { requireUnit } from './require-unit.js';

/** What to convert: a quantity and two of its units. */
export interface QuantityConversion<Q extends Quantity> {
  readonly quantity: Q;
  readonly from: QuantityUnit<Q>;
  readonly to: QuantityUnit<Q>;
}

/**
 * The same speed, length, volume, mass, flow, power or torque in another unit.
 *
 * @param value finite figure in unit `from`
 * @returns the figure in unit `to`, from exact factors
 * @throws NotFiniteError; UnknownUnitError for a quantity or unit that QUANTITY_UNITS does not have
 * Source: NIST SP 811 (2008), Appendix B; see QUANTITY_UNITS.
 * @example convertQuantity(60, { quantity: 'speed', from: 'mph', to: 'kmh' }) // 96.56064
 */
export function convertQuantity<Q extends Quantity>(
  value: number,
  conversion: QuantityConversion<Q>,
): number {
  requireNumber('convertQuantity', 'value', value);
  const { quantity, from, to } = conversion;
  requireUnit('convertQuantity', 'quantity', quantity, QUANTITY_UNITS);
  const factors: Readonly<Record<string, number>> = QUANTITY_UNITS[quantity];
  requireUnit('convertQuantity', 'from', from, factors);
  requireUnit('convertQuantity', 'to', to, factors);
  const [fromFactor, toFactor] = [factors[from], factors[to]];
  if (from === to || fromFactor === undefined || toFactor === undefined) return value;
  return (value * fromFactor) / toFactor;
}
