import type { Log, Pull, WorkshopTransaction } from '@pullbook/database';
import { DomainError } from '../plumbing/domain-error.js';

type LogRecord = Log & { readonly pulls: Pick<Pull, 'id' | 'logPullIndex'>[] };

/** Which logs to load. */
type LogFilter = { readonly id: string } | { readonly tuningSessionId: string; readonly sha256?: string };

/** Loads logs with the pulls that were confirmed from them, in the order in which they came in. */
export async function loadLogs(db: WorkshopTransaction, where: LogFilter): Promise<LogRecord[]> {
  return db.log.findMany({
    where,
    orderBy: [{ recordedAt: 'asc' }, { id: 'asc' }],
    include: {
      pulls: { select: { id: true, logPullIndex: true }, orderBy: { logPullIndex: 'asc' } },
    },
  });
}

/**
 * One log.
 *
 * @throws DomainError not-found
 */
export async function loadLog(db: WorkshopTransaction, logId: string): Promise<LogRecord> {
  const [log] = await loadLogs(db, { id: logId });
  if (log === undefined) throw new DomainError('not-found', 'this workshop has no such log');
  return log;
}
