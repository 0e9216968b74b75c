import type { Log } from '@pullbook/contracts';
import type { Actor } from '../plumbing/actor.js';
import { loadSession } from '../tuning-sessions/load-session.js';
import { loadLogs } from './load-log.js';
import { presentLog } from './present-log.js';

/**
 * The logs of a tuning session in the order in which they came in.
 *
 * @throws DomainError not-found
 */
export async function findLogs(actor: Actor, sessionId: string): Promise<Log[]> {
  await loadSession(actor.db, sessionId);
  return (await loadLogs(actor.db, { tuningSessionId: sessionId })).map((row) => presentLog(row));
}
