import { CarLimits, Mechanics } from '@pullbook/contracts';
import type { WorkshopTransaction } from '@pullbook/database';
import { DomainError } from '../plumbing/domain-error.js';
import type { CeilingCar } from './ceiling-of-car.js';

/**
 * What the ceiling of a car follows from, with the revision of its record.
 *
 * @throws DomainError not-found
 */
export async function loadCeilingCar(
  db: WorkshopTransaction,
  carId: string,
): Promise<CeilingCar & { readonly revision: number }> {
  const row = await db.car.findUnique({ where: { id: carId } });
  if (row === null) throw new DomainError('not-found', 'there is no car of this id');
  return {
    revision: row.revision,
    limits: CarLimits.parse(row.limits),
    mechanics: Mechanics.parse(row.mechanics),
    storedMap: row.compressorMap,
  };
}
