import { refreshDrift } from '../outlook/refresh-drift.js';
import type { Actor } from '../plumbing/actor.js';
import { recordEvent } from '../plumbing/record-event.js';
import { loadPreset } from '../presets/load-presets.js';
import { changeStandingPull } from './change-standing-pull.js';
import type { RecordedPull } from './record-pull.js';

/**
 * Takes a pull out of what the advice rests on, with a reason; it stays in the book.
 *
 * @throws DomainError not-found, visit-closed, void-already with who did it and why
 */
export function voidPull(actor: Actor, pullId: string, reason: string): Promise<RecordedPull> {
  return changeStandingPull(actor, pullId, async (tx, before) => {
    const row = await tx.pull.update({
      where: { id: pullId },
      // Gives its place in the log free: the same found pull may be taken in again, with the right settings.
      data: { voidedAt: actor.now(), voidReason: reason, voidedBy: actor.name, logPullIndex: null },
    });
    const { visitId, presetId, number } = row;
    await recordEvent(tx, actor, {
      action: 'pull-voided',
      noun: 'pull',
      recordId: pullId,
      summary: `voided pull ${number}: ${reason}`,
      detail: { visitId, presetId, number, reason, logPullIndex: before.logPullIndex },
    });
    await refreshDrift(tx, actor, await loadPreset(tx, presetId));
    return row;
  });
}
