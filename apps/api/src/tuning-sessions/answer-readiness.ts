import type { ReadinessAnswer, TuningSession } from '@pullbook/contracts';
import type { Actor } from '../plumbing/actor.js';
import { DomainError } from '../plumbing/domain-error.js';
import { recordEvent } from '../plumbing/record-event.js';
import { claimSession } from './claim-session.js';
import { getSession } from './get-session.js';
import { holdOpenVisit } from './hold-open-visit.js';
import { judgeReadiness } from './judge-readiness.js';
import { loadSession, readBounds } from './load-session.js';

/**
 * Writes down the answers of a readiness check and whether it is passed. An answer that does not pass is kept too: it
 * says what is still open.
 *
 * @param expectedRevision the revision of the session that the answers were given on
 * @throws DomainError not-found, changed-meanwhile, visit-closed, invalid-request for a question answered twice
 */
export async function answerReadiness(
  actor: Actor,
  sessionId: string,
  expectedRevision: number,
  answer: ReadinessAnswer,
): Promise<TuningSession> {
  const okKeys = new Set(answer.items.filter((item) => item.ok).map((item) => item.key));
  if (new Set(answer.items.map((item) => item.key)).size < answer.items.length) {
    throw new DomainError('invalid-request', 'a question of the readiness check is answered twice', {
      errors: [{ field: 'items', message: 'answer each question once' }],
    });
  }
  const { visit, number } = await loadSession(actor.db, sessionId);
  await actor.db.$transaction(async (tx) => {
    await holdOpenVisit(tx, visit.id);
    const bounds = await readBounds(tx, visit.carId);
    const { passed } = judgeReadiness({ okKeys, overBoostCutKpa: answer.overBoostCutKpa, ...bounds });
    await claimSession(
      tx,
      { sessionId, expectedRevision },
      {
        readiness: answer,
        readinessPassed: passed,
        readinessBy: actor.name,
        readinessAt: actor.now(),
      },
    );
    await recordEvent(tx, actor, {
      action: passed ? 'readiness-passed' : 'readiness-not-passed',
      noun: 'tuning-session',
      recordId: sessionId,
      summary: `readiness check of tuning session ${number} ${passed ? 'passed' : 'is still open'}`,
      detail: answer,
    });
  });
  return getSession(actor, sessionId);
}
