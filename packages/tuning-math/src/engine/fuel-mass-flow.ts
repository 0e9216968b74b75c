import { requireNumber } from '../require-number.js';

/**
 * Fuel that goes with the air at a mixture.
 *
 * @param airKgPerS air, kg/s, 0 or more
 * @param airFuelRatio kg of air to a kg of fuel, 3 to 60
 * @returns kg/s
 * @throws NotFiniteError, OutOfRangeError
 * Source: definition of the air-fuel ratio.
 * @example fuelMassFlow(0.2225, 11.8) // 0.018856
 */
export function fuelMassFlow(airKgPerS: number, airFuelRatio: number): number {
  requireNumber('fuelMassFlow', 'airKgPerS', airKgPerS, { min: 0, max: 10 });
  requireNumber('fuelMassFlow', 'airFuelRatio', airFuelRatio, { min: 3, max: 60 });
  return airKgPerS / airFuelRatio;
}
