import type { Log, LogVersion, Pull, WorkshopTransaction } from '@pullbook/database';
import { DomainError } from '../plumbing/domain-error.js';

/** A log with the newest of its versions and the pulls that were confirmed from any of them. */
export type LogRecord = Log & {
  readonly newest: LogVersion;
  readonly pulls: Pick<Pull, 'id' | 'logPullIndex' | 'logVersion'>[];
};

/** Which logs to load. */
type LogFilter = { readonly id: string } | { readonly tuningSessionId: string; readonly sha256?: string };

/** Loads logs in the order in which they came in. */
export async function loadLogs(db: WorkshopTransaction, where: LogFilter): Promise<LogRecord[]> {
  const rows = await db.log.findMany({
    where,
    orderBy: [{ recordedAt: 'asc' }, { id: 'asc' }],
    include: {
      versions: { orderBy: { number: 'desc' }, take: 1 },
      pulls: {
        select: { id: true, logPullIndex: true, logVersion: true },
        orderBy: [{ logPullIndex: 'asc' }, { id: 'asc' }],
      },
    },
  });
  return rows.map(({ versions: [newest], ...row }) => {
    if (newest === undefined) throw new Error(`log ${row.id} has no version`);
    return { ...row, newest };
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
