import type { TuningSession } from '@pullbook/contracts';
import type { Actor } from '../plumbing/actor.js';
import { loadSession } from './load-session.js';
import { presentSession } from './present-session.js';

/**
 * One tuning session with its readiness as it stands now.
 *
 * @throws DomainError not-found
 */
export async function getSession(actor: Actor, sessionId: string): Promise<TuningSession> {
  return presentSession(await loadSession(actor.db, sessionId));
}
