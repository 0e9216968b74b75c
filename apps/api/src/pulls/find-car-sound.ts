import type { Actor } from '../plumbing/actor.js';
import { recordEvent } from '../plumbing/record-event.js';
import { changeStandingPull } from './change-standing-pull.js';
import type { RecordedPull } from './record-pull.js';

/**
 * Writes down that the car was looked over after this pull and nothing wrong was found: the advice reads no fault into
 * this pull and those before it any more. Said again of the same pull, the first word stands.
 *
 * @throws DomainError not-found, visit-closed, void-already with who voided it and why
 */
export function findCarSound(actor: Actor, pullId: string, note: string): Promise<RecordedPull> {
  return changeStandingPull(actor, pullId, async (tx, before) => {
    if (before.foundSoundAt !== null) return before;
    const row = await tx.pull.update({
      where: { id: pullId },
      data: { foundSoundAt: actor.now(), foundSoundNote: note, foundSoundBy: actor.name },
    });
    const { visitId, presetId, number } = row;
    await recordEvent(tx, actor, {
      action: 'car-found-sound',
      noun: 'pull',
      recordId: pullId,
      summary: `looked the car over after pull ${number} and found it sound${note === '' ? '' : `: ${note}`}`,
      detail: { visitId, presetId, number, note },
    });
    return row;
  });
}
