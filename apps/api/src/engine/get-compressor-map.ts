import type { CarCompressorMap } from '@pullbook/contracts';
import type { WorkshopTransaction } from '@pullbook/database';
import { DomainError } from '../plumbing/domain-error.js';
import { storedMapOf } from './stored-map.js';

/**
 * The compressor map of a car as it goes out.
 *
 * @throws DomainError not-found for the car, and for one without a map
 */
export async function getCompressorMap(db: WorkshopTransaction, carId: string): Promise<CarCompressorMap> {
  const car = await db.car.findUnique({ where: { id: carId } });
  if (car === null) throw new DomainError('not-found', 'there is no car of this id');
  const map = storedMapOf(car.compressorMap);
  if (map === null) throw new DomainError('not-found', 'this car has no compressor map yet');
  const pointCount = map.lines.reduce((count, line) => count + line.flowsKgPerS.length, 0);
  return { carId, ...map, pointCount, revision: car.revision };
}
