import type { Prisma, WorkshopTransaction } from '@pullbook/database';
import type { Actor } from './actor.js';

export interface RecordedEvent {
  /** What was done, as a word that programs can rely on: `customer-created`. */
  readonly action: string;
  readonly noun: string;
  readonly recordId: string;
  /** What was done, in words for the page of records. */
  readonly summary: string;
  /** Values that were set, for those who look closer; never a password or secret. */
  readonly detail?: object;
}

/** Writes a line of the book's own history, in the transaction that makes the change. */
export async function recordEvent(
  tx: WorkshopTransaction,
  actor: Actor,
  event: RecordedEvent,
): Promise<void> {
  await tx.auditEvent.create({
    data: {
      ...event,
      // Through JSON, so that dates and fields that were left out are stored the same on both databases.
      detail: JSON.parse(JSON.stringify(event.detail ?? {})) as Prisma.InputJsonObject,
      by: actor.name,
      at: actor.now(),
    },
  });
  if (actor.keptReplyId !== undefined) {
    const where = { id: actor.keptReplyId, madeRecordId: null };
    await tx.keptReply.updateMany({ where, data: { madeRecordId: event.recordId } });
  }
}
