import type { Controller } from '@pullbook/contracts';
import type { WorkshopTransaction } from '@pullbook/database';
import { DomainError } from '../plumbing/domain-error.js';
import { presentController } from './present-controller.js';

/**
 * One kind of controller.
 * @throws DomainError not-found
 */
export async function getController(db: WorkshopTransaction, id: string): Promise<Controller> {
  const row = await db.controller.findUnique({ where: { id } });
  if (!row) throw new DomainError('not-found', 'there is no controller of this id');
  return presentController(row);
}
