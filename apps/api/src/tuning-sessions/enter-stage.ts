import type { Stage } from '@pullbook/contracts';
import type { WorkshopTransaction } from '@pullbook/database';
import type { Actor } from '../plumbing/actor.js';
import { recordEvent } from '../plumbing/record-event.js';
import type { OpenVisit } from './hold-open-visit.js';

/** Moves a held visit to the stage that the work itself has brought it to. */
export async function enterStage(
  tx: WorkshopTransaction,
  actor: Actor,
  visit: OpenVisit,
  entry: { stage: Stage; note: string },
): Promise<void> {
  await tx.visit.update({
    where: { id: visit.id },
    data: { stage: entry.stage, revision: { increment: 1 } },
  });
  await tx.stageEntry.create({
    data: { visitId: visit.id, ...entry, by: actor.name, enteredAt: actor.now() },
  });
  await recordEvent(tx, actor, {
    action: 'visit-stage',
    noun: 'visit',
    recordId: visit.id,
    summary: `visit ${visit.number} is ${entry.stage}`,
    detail: { from: visit.stage, to: entry.stage, note: entry.note },
  });
}
