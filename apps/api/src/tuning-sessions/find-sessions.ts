import type { TuningSession } from '@pullbook/contracts';
import type { Actor } from '../plumbing/actor.js';
import { DomainError } from '../plumbing/domain-error.js';
import { loadSessions } from './load-session.js';
import { presentSession } from './present-session.js';

/**
 * The tuning sessions of a visit, in order.
 *
 * @throws DomainError not-found for a visit of another workshop
 */
export async function findSessions(actor: Actor, visitId: string): Promise<TuningSession[]> {
  const visit = await actor.db.visit.findFirst({ where: { id: visitId }, select: { id: true } });
  if (visit === null) throw new DomainError('not-found', 'this workshop has no such visit');
  return (await loadSessions(actor.db, { visitId })).map(presentSession);
}
