import type { Visit, VisitChange } from '@pullbook/contracts';
import type { z } from 'zod';
import type { Actor } from '../plumbing/actor.js';
import { DomainError } from '../plumbing/domain-error.js';
import { changedMeanwhile } from '../plumbing/etags.js';
import { recordEvent } from '../plumbing/record-event.js';
import { withoutGaps } from '../plumbing/without-gaps.js';
import { checkTuner } from './check-tuner.js';
import { getVisit } from './get-visit.js';

/**
 * Changes wishes, bay, tuner or times of a visit; its stage is moved by `moveVisit`.
 * @param revision the one that the sender has seen
 * @throws DomainError not-found, visit-closed once it is collected, changed-meanwhile
 */
export function changeVisit(
  actor: Actor,
  id: string,
  revision: number,
  change: z.infer<typeof VisitChange>,
): Promise<Visit> {
  return actor.db.$transaction(async (tx) => {
    const { number, stage } = await getVisit(tx, id);
    if (stage === 'collected') {
      throw new DomainError('visit-closed', `visit ${number} is closed: its car has been collected`);
    }
    await checkTuner(tx, change.tunerId);
    const given = withoutGaps(change);
    const { count } = await tx.visit.updateMany({
      where: { id, revision },
      data: { ...given, revision: { increment: 1 } },
    });
    if (count === 0) throw changedMeanwhile('visit');
    await recordEvent(tx, actor, {
      action: 'visit-changed',
      noun: 'visit',
      recordId: id,
      summary: `changed visit ${number}`,
      detail: given,
    });
    return getVisit(tx, id);
  });
}
