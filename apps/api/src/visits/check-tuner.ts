import type { WorkshopTransaction } from '@pullbook/database';
import { DomainError } from '../plumbing/domain-error.js';

/**
 * Whether somebody may be named as a visit's tuner: an active tuner or owner of this workshop.
 * @throws DomainError not-found, naming the field
 */
export async function checkTuner(tx: WorkshopTransaction, tunerId: string | null | undefined): Promise<void> {
  if (tunerId === null || tunerId === undefined) return;
  const where = { id: tunerId, active: true, role: { in: ['tuner', 'owner'] } };
  if (await tx.member.findFirst({ where })) return;
  const errors = [{ field: 'tunerId', message: 'is no tuner of this workshop' }];
  throw new DomainError('not-found', 'there is no tuner of this id', { errors });
}
