import type { Car } from '@pullbook/contracts';
import type { WorkshopTransaction } from '@pullbook/database';
import { DomainError } from '../plumbing/domain-error.js';
import { carParts, presentCar } from './present-car.js';

/**
 * One car.
 * @throws DomainError not-found
 */
export async function getCar(db: WorkshopTransaction, id: string): Promise<Car> {
  const row = await db.car.findUnique({ where: { id }, include: carParts });
  if (!row) throw new DomainError('not-found', 'there is no car of this id');
  return presentCar(row);
}
