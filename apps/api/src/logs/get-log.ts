import type { Log } from '@pullbook/contracts';
import type { Actor } from '../plumbing/actor.js';
import { loadLog } from './load-log.js';
import { presentLog } from './present-log.js';

/**
 * One log with what was computed from it.
 *
 * @throws DomainError not-found
 */
export async function getLog(actor: Actor, logId: string): Promise<Log> {
  return presentLog(await loadLog(actor.db, logId));
}
