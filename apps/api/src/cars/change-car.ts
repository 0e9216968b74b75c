import type { Car, CarChange } from '@pullbook/contracts';
import type { z } from 'zod';
import type { Actor } from '../plumbing/actor.js';
import { changedMeanwhile } from '../plumbing/etags.js';
import { recordEvent } from '../plumbing/record-event.js';
import { withoutGaps } from '../plumbing/without-gaps.js';
import { carKeys } from './car-keys.js';
import { checkCarFields } from './check-car-fields.js';
import { checkCarParts } from './check-car-parts.js';
import { getCar } from './get-car.js';

/**
 * Changes what is known of a car, or whose it is. Limits that come down leave ceilings above them standing: the next
 * advice says so and gives none until they are lowered.
 * @param revision the one that the sender has seen
 * @throws DomainError not-found, not-allowed for fields that are not the desk's, changed-meanwhile
 */
export function changeCar(
  actor: Actor,
  id: string,
  revision: number,
  change: z.infer<typeof CarChange>,
): Promise<Car> {
  return actor.db.$transaction(async (tx) => {
    const before = await getCar(tx, id);
    const given = givenOf(before, change);
    checkCarFields(actor, given);
    await checkCarParts(tx, given);
    const { count } = await tx.car.updateMany({
      where: { id, revision },
      data: { ...given, ...carKeys({ ...before, ...given }), revision: { increment: 1 } },
    });
    if (count === 0) throw changedMeanwhile('car');
    await recordEvent(tx, actor, {
      action: 'car-changed',
      noun: 'car',
      recordId: id,
      summary: `changed the car ${given.plate ?? before.plate}`,
      detail: given,
    });
    return getCar(tx, id);
  });
}

/** What is to be written: a change of the mechanics that says nothing of air and fuel leaves them as they are. */
function givenOf(before: Car, { mechanics, ...change }: z.infer<typeof CarChange>): Partial<Omit<Car, 'id'>> {
  if (mechanics === undefined) return withoutGaps(change);
  const { airAndFuel = before.mechanics.airAndFuel } = mechanics;
  return { ...withoutGaps(change), mechanics: { ...mechanics, airAndFuel } };
}
