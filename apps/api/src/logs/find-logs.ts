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
export async function findLogs({ db }: Pick<Actor, 'db'>, sessionId: string): Promise<Log[]> {
  await loadSession(db, sessionId);
  const rows = await loadLogs(db, { tuningSessionId: sessionId });
  return Promise.all(rows.map((row) => presentLog(db, row)));
}
