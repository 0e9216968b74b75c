import { refreshDrift } from '../outlook/refresh-drift.js';
import type { Actor } from '../plumbing/actor.js';
import { DomainError } from '../plumbing/domain-error.js';
import { recordEvent } from '../plumbing/record-event.js';
import { holdOpenVisit } from '../tuning-sessions/hold-open-visit.js';
import { loadPreset } from '../presets/load-presets.js';
import { presentPull } from './present-pull.js';
import type { RecordedPull } from './record-pull.js';
import { voidAlready } from './void-already.js';

/**
 * Takes a pull out of what the advice rests on, with a reason; it stays in the book.
 *
 * @throws DomainError not-found, visit-closed, void-already with who did it and why
 */
export async function voidPull(actor: Actor, pullId: string, reason: string): Promise<RecordedPull> {
  const found = await actor.db.pull.findFirst({ where: { id: pullId }, select: { visitId: true } });
  if (found === null) throw new DomainError('not-found', 'this workshop has no such pull');
  const pull = await actor.db.$transaction(async (tx) => {
    await holdOpenVisit(tx, found.visitId);
    const before = await tx.pull.findFirstOrThrow({ where: { id: pullId } });
    if (before.voidedAt !== null) throw voidAlready(before);
    const row = await tx.pull.update({
      where: { id: pullId },
      // Gives its place in the log free: the same found pull may be taken in again, with the right settings.
      data: { voidedAt: actor.now(), voidReason: reason, voidedBy: actor.name, logPullIndex: null },
    });
    await recordEvent(tx, actor, {
      action: 'pull-voided',
      noun: 'pull',
      recordId: pullId,
      summary: `voided pull ${row.number}: ${reason}`,
      detail: {
        visitId: found.visitId,
        presetId: row.presetId,
        number: row.number,
        reason,
        logPullIndex: before.logPullIndex,
      },
    });
    await refreshDrift(tx, actor, await loadPreset(tx, row.presetId));
    return presentPull(row);
  });
  return { pull, visitId: found.visitId };
}
