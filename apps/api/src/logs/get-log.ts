import type { Log } from '@pullbook/contracts';
import type { Actor } from '../plumbing/actor.js';
import { DomainError } from '../plumbing/domain-error.js';
import { loadLog } from './load-log.js';
import { presentLog } from './present-log.js';

/**
 * One log with what was computed from it, by its newest version or another one.
 *
 * @throws DomainError not-found
 */
export async function getLog({ db }: Pick<Actor, 'db'>, logId: string, number?: number): Promise<Log> {
  const row = await loadLog(db, logId);
  if (number === undefined || number === row.newest.number) return presentLog(db, row);
  const version = await db.logVersion.findFirst({ where: { logId, number } });
  if (version === null) throw new DomainError('not-found', `this log has no version ${number}`);
  return presentLog(db, row, { version });
}
