import type { AuditEvent, AuditQuery } from '@pullbook/contracts';
import type { z } from 'zod';
import type { Actor } from '../plumbing/actor.js';
import { pageArguments, toPage } from '../plumbing/paging.js';

/** The book's own history, newest first; `recordId` picks that of one record. */
export async function findRecords(
  actor: Actor,
  query: z.infer<typeof AuditQuery>,
): Promise<{ items: AuditEvent[]; nextCursor: string | null }> {
  const rows = await actor.db.auditEvent.findMany({
    ...pageArguments(query),
    where: query.recordId === undefined ? {} : { recordId: query.recordId },
    orderBy: { id: 'desc' },
  });
  return toPage(rows, query, ({ id, at, by, action, noun, recordId, summary }) => ({
    id,
    at: at.toISOString(),
    by,
    action,
    noun,
    recordId,
    summary,
  }));
}
