import type { Actor } from '../plumbing/actor.js';
import { DomainError } from '../plumbing/domain-error.js';
import { recordEvent } from '../plumbing/record-event.js';
import { holdOpenVisit } from '../tuning-sessions/hold-open-visit.js';
import { presentPull } from './present-pull.js';
import type { RecordedPull } from './record-pull.js';
import { voidAlready } from './void-already.js';

/**
 * Writes down that the car was looked over after this pull and nothing wrong was found: the advice reads no fault into
 * this pull and those before it any more. Said again of the same pull, the first word stands.
 *
 * @throws DomainError not-found, visit-closed, void-already with who voided it and why
 */
export async function findCarSound(actor: Actor, pullId: string, note: string): Promise<RecordedPull> {
  const found = await actor.db.pull.findFirst({ where: { id: pullId }, select: { visitId: true } });
  if (found === null) throw new DomainError('not-found', 'this workshop has no such pull');
  const pull = await actor.db.$transaction(async (tx) => {
    await holdOpenVisit(tx, found.visitId);
    const before = await tx.pull.findFirstOrThrow({ where: { id: pullId } });
    if (before.voidedAt !== null) throw voidAlready(before);
    if (before.foundSoundAt !== null) return presentPull(before);
    const row = await tx.pull.update({
      where: { id: pullId },
      data: { foundSoundAt: actor.now(), foundSoundNote: note, foundSoundBy: actor.name },
    });
    await recordEvent(tx, actor, {
      action: 'car-found-sound',
      noun: 'pull',
      recordId: pullId,
      summary: `looked the car over after pull ${row.number} and found it sound${note === '' ? '' : `: ${note}`}`,
      detail: { visitId: found.visitId, presetId: row.presetId, number: row.number, note },
    });
    return presentPull(row);
  });
  return { pull, visitId: found.visitId };
}
