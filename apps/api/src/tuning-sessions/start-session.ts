import type { TuningSession, TuningSessionNew } from '@pullbook/contracts';
import type { Actor } from '../plumbing/actor.js';
import { recordEvent } from '../plumbing/record-event.js';
import { enterStage } from './enter-stage.js';
import { getSession } from './get-session.js';
import { holdOpenVisit } from './hold-open-visit.js';

/** Stages from which the first full load puts a visit on test. */
const stagesBeforeTest = ['booked', 'arrived', 'to-sign-off'];

/**
 * Starts a tuning session in a visit and puts the visit on test where it was not yet, or no longer.
 *
 * @throws DomainError not-found, visit-closed
 */
export async function startSession(
  actor: Actor,
  visitId: string,
  input: TuningSessionNew,
): Promise<TuningSession> {
  const sessionId = await actor.db.$transaction(async (tx) => {
    const visit = await holdOpenVisit(tx, visitId);
    const count = await tx.tuningSession.count({ where: { visitId } });
    const session = await tx.tuningSession.create({
      data: { ...input, visitId, number: count + 1, startedAt: actor.now() },
    });
    await recordEvent(tx, actor, {
      action: 'tuning-session-started',
      noun: 'tuning-session',
      recordId: session.id,
      summary: `started tuning session ${count + 1} of visit ${visit.number} at ${input.place}`,
      detail: { visitId, ...input },
    });
    if (stagesBeforeTest.includes(visit.stage)) {
      await enterStage(tx, actor, visit, { stage: 'on-test', note: `tuning session ${count + 1} started` });
    }
    return session.id;
  });
  return getSession(actor, sessionId);
}
