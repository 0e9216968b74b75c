import type { Pull } from '@pullbook/contracts';
import type { Actor } from '../plumbing/actor.js';
import { loadSession } from '../tuning-sessions/load-session.js';
import { presentPull } from './present-pull.js';

/**
 * The pulls of a tuning session in the order in which they were recorded, voided ones too.
 *
 * @param presetId only those of this preset
 * @throws DomainError not-found
 */
export async function findPulls(actor: Actor, sessionId: string, presetId?: string): Promise<Pull[]> {
  await loadSession(actor.db, sessionId);
  const rows = await actor.db.pull.findMany({
    where: { tuningSessionId: sessionId, ...(presetId === undefined ? {} : { presetId }) },
    orderBy: [{ recordedAt: 'asc' }, { id: 'asc' }],
  });
  return rows.map(presentPull);
}
