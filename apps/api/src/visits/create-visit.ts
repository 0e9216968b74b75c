import type { Visit, VisitNew } from '@pullbook/contracts';
import type { WorkshopTransaction } from '@pullbook/database';
import type { Actor } from '../plumbing/actor.js';
import { DomainError } from '../plumbing/domain-error.js';
import { recordEvent } from '../plumbing/record-event.js';
import { checkTuner } from './check-tuner.js';
import { getVisit } from './get-visit.js';

/**
 * Books a visit, or takes in a car that has arrived.
 * @throws DomainError not-found for the car or the tuner
 */
export function createVisit(actor: Actor, input: VisitNew): Promise<Visit> {
  return actor.db.$transaction((tx) => addVisit(tx, actor, input));
}

/** The same inside a transaction that does more. */
export async function addVisit(tx: WorkshopTransaction, actor: Actor, input: VisitNew): Promise<Visit> {
  if (!(await tx.car.findUnique({ where: { id: input.carId } }))) {
    const errors = [{ field: 'carId', message: 'is no car of this workshop' }];
    throw new DomainError('not-found', 'there is no car of this id', { errors });
  }
  await checkTuner(tx, input.tunerId);
  const number = await nextNumber(tx, actor);
  const now = actor.now();
  const { id } = await tx.visit.create({ data: { ...input, number, createdAt: now } });
  await tx.stageEntry.create({ data: { visitId: id, stage: input.stage, by: actor.name, enteredAt: now } });
  await recordEvent(tx, actor, {
    action: 'visit-created',
    noun: 'visit',
    recordId: id,
    summary: `${input.stage === 'booked' ? 'booked' : 'took in'} visit ${number}`,
    detail: input,
  });
  return getVisit(tx, id);
}

/** Counting up holds the workshop's row, so that no two visits get one number. */
async function nextNumber(tx: WorkshopTransaction, actor: Actor): Promise<number> {
  const { lastVisitNumber } = await tx.workshop.update({
    where: { id: actor.workshopId },
    data: { lastVisitNumber: { increment: 1 } },
  });
  return lastVisitNumber;
}
