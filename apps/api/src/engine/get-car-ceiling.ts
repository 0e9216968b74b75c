import type { CarCeiling } from '@pullbook/contracts';
import type { Actor } from '../plumbing/actor.js';
import { ceilingOfCar } from './ceiling-of-car.js';
import { ceilingRows } from './ceiling-rows.js';
import { loadCeilingCar } from './load-ceiling-car.js';

/**
 * How high a ceiling of a car may stand, and which limit says so.
 *
 * @throws DomainError not-found
 */
export async function getCarCeiling({ db }: Actor, carId: string): Promise<CarCeiling> {
  const car = await loadCeilingCar(db, carId);
  const ceiling = ceilingOfCar(car);
  return {
    carId,
    ceilingKpa: ceiling?.ceilingKpa ?? null,
    binds: ceiling?.binds.cause ?? null,
    limits: ceilingRows(car, ceiling),
  };
}
