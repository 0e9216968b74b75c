import type { WorkshopTransaction } from '@pullbook/database';
import { changedMeanwhile } from '../plumbing/etags.js';

type SessionData = Parameters<WorkshopTransaction['tuningSession']['updateMany']>[0]['data'];

/**
 * Writes to a tuning session if it still is at the revision that the writer saw.
 *
 * @throws DomainError changed-meanwhile
 */
export async function claimSession(
  tx: WorkshopTransaction,
  expected: { sessionId: string; expectedRevision: number },
  data: SessionData,
): Promise<void> {
  const { count } = await tx.tuningSession.updateMany({
    where: { id: expected.sessionId, revision: expected.expectedRevision },
    data: { ...data, revision: { increment: 1 } },
  });
  if (count === 1) return;
  throw changedMeanwhile('tuning session');
}
