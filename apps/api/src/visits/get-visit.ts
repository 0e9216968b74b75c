import type { Visit } from '@pullbook/contracts';
import type { WorkshopTransaction } from '@pullbook/database';
import { DomainError } from '../plumbing/domain-error.js';
import { presentVisit, visitParts } from './present-visit.js';

/**
 * One visit with all its stages.
 * @throws DomainError not-found
 */
export async function getVisit(db: WorkshopTransaction, id: string): Promise<Visit> {
  const row = await db.visit.findUnique({ where: { id }, include: visitParts });
  if (!row) throw new DomainError('not-found', 'there is no visit of this id');
  return presentVisit(row);
}
