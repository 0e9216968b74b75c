import type { CarLimits } from '@pullbook/contracts';
import { causeOfLimit, limitNames } from '../engine/limit-names.js';

/** The limit of a car that binds first. */
export interface BindingLimit {
  /** In the words of the workshop: 'over-boost cut', 'sensor full scale', ... */
  readonly name: string;
  readonly limitKpa: number;
}

/**
 * The lowest limit on record of a car as it was entered, and which one it is; null where none is known. What an
 * over-boost cut may not stand above; a ceiling keeps its distance from cut and sensor: see `ceilingOfCar`. Of equal
 * ones the first in the order of the record binds.
 *
 * @param limits kPa gauge, null where not known
 */
export function lowestCarLimit(limits: CarLimits): BindingLimit | null {
  let lowest: BindingLimit | null = null;
  for (const key of Object.keys(causeOfLimit) as (keyof CarLimits)[]) {
    const limitKpa = limits[key];
    if (limitKpa === null || (lowest !== null && limitKpa >= lowest.limitKpa)) continue;
    lowest = { name: limitNames[causeOfLimit[key]], limitKpa };
  }
  return lowest;
}
