import { closedStages } from '@pullbook/contracts';
import type { WorkshopTransaction } from '@pullbook/database';
import { DomainError } from '../plumbing/domain-error.js';

/** A visit in which pulls may still be recorded. */
export interface OpenVisit {
  readonly id: string;
  readonly number: number;
  readonly carId: string;
  readonly stage: string;
}

/**
 * Holds a visit for the rest of the transaction, so that whatever else wants to write into it waits: numbers do not
 * collide and nothing slips in behind a sign-off. Must be the transaction's first statement, because a read before it
 * would look at the book as it was before the wait.
 *
 * @throws DomainError not-found
 */
export async function holdVisit(
  tx: WorkshopTransaction,
  visitId: string,
): Promise<OpenVisit & { readonly isSealed: boolean }> {
  // Writing the number as it is changes nothing and takes the row's lock on both databases.
  await tx.visit.updateMany({ where: { id: visitId }, data: { number: { increment: 0 } } });
  const visit = await tx.visit.findFirst({
    where: { id: visitId },
    select: { id: true, number: true, carId: true, stage: true, signOff: { select: { id: true } } },
  });
  if (visit === null) throw new DomainError('not-found', 'this workshop has no such visit');
  const { signOff, ...held } = visit;
  return { ...held, isSealed: signOff !== null };
}

/**
 * The same, for a visit whose book must still be open.
 *
 * @throws DomainError not-found, or visit-closed once it is signed off, ready or collected
 */
export async function holdOpenVisit(tx: WorkshopTransaction, visitId: string): Promise<OpenVisit> {
  const visit = await holdVisit(tx, visitId);
  if (visit.isSealed || closedStages.includes(visit.stage)) {
    throw new DomainError(
      'visit-closed',
      `visit ${visit.number} is closed; nothing in it can be changed any more`,
    );
  }
  return visit;
}
