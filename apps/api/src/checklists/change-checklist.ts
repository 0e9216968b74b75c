import type { SignOffChecklist, SignOffChecklistChange } from '@pullbook/contracts';
import type { Actor } from '../plumbing/actor.js';
import { changedMeanwhile } from '../plumbing/etags.js';
import { recordEvent } from '../plumbing/record-event.js';
import { makeItems } from './make-items.js';
import { readChecklist } from './read-checklist.js';

/**
 * Makes a new revision of what a sign-off asks for; sealed sign-offs keep theirs.
 *
 * @param seen the revision that the sender has seen
 * @throws DomainError changed-meanwhile, and the refusals of `makeItems`
 */
export function changeChecklist(
  actor: Actor,
  seen: number,
  { items }: SignOffChecklistChange,
): Promise<SignOffChecklist> {
  const { workshopId } = actor;
  return actor.db.$transaction(async (tx) => {
    const before = await readChecklist(tx, workshopId);
    const { count } = await tx.workshop.updateMany({
      where: { id: workshopId, checklistRevision: seen },
      data: { checklistRevision: { increment: 1 } },
    });
    if (count === 0) throw changedMeanwhile('checklist');
    const revision = seen + 1;
    const made = makeItems(items, before.items, revision);
    await tx.checklistRevision.create({
      data: { revision, items: made, madeBy: actor.name, madeAt: actor.now() },
    });
    await recordEvent(tx, actor, {
      action: 'checklist-changed',
      noun: 'checklist',
      recordId: workshopId,
      summary: `changed the checklist of the sign-off, revision ${revision}`,
      detail: { revision, items: made },
    });
    return readChecklist(tx, workshopId);
  });
}
