import { Prisma } from '@pullbook/database';
import type { Actor } from '../plumbing/actor.js';
import { changedMeanwhile } from '../plumbing/etags.js';
import { recordEvent } from '../plumbing/record-event.js';
import { getCompressorMap } from './get-compressor-map.js';

/**
 * Takes the compressor map from a car; the record of the change keeps it.
 *
 * @param revision of the car, as the sender has seen it
 * @throws DomainError not-found, changed-meanwhile
 */
export function removeCompressorMap(actor: Actor, carId: string, revision: number): Promise<void> {
  return actor.db.$transaction(async (tx) => {
    const { csv, flowUnit, reference, source } = await getCompressorMap(tx, carId);
    const { count } = await tx.car.updateMany({
      where: { id: carId, revision },
      data: { compressorMap: Prisma.DbNull, revision: { increment: 1 } },
    });
    if (count === 0) throw changedMeanwhile('car');
    await recordEvent(tx, actor, {
      action: 'compressor-map-removed',
      noun: 'car',
      recordId: carId,
      summary: 'removed the compressor map',
      detail: { csv, flowUnit, reference, source },
    });
  });
}
