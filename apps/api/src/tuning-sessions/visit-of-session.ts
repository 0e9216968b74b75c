import type { WorkshopTransaction } from '@pullbook/database';
import { DomainError } from '../plumbing/domain-error.js';

/**
 * Id of the visit that a tuning session belongs to: what must be held before anything in the session is written.
 *
 * @throws DomainError not-found
 */
export async function visitOfSession(db: WorkshopTransaction, sessionId: string): Promise<string> {
  const session = await db.tuningSession.findFirst({ where: { id: sessionId }, select: { visitId: true } });
  if (session === null) throw new DomainError('not-found', 'this workshop has no such tuning session');
  return session.visitId;
}
