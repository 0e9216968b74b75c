import { LogAnalysis, type LogVersionHead } from '@pullbook/contracts';
import type { z } from 'zod';
import type { Actor } from '../plumbing/actor.js';
import { loadLog } from './load-log.js';

/**
 * All computations of a log, the newest first.
 *
 * @throws DomainError not-found
 */
export async function findLogVersions(
  { db }: Pick<Actor, 'db'>,
  logId: string,
): Promise<z.infer<typeof LogVersionHead>[]> {
  await loadLog(db, logId);
  const rows = await db.logVersion.findMany({ where: { logId }, orderBy: { number: 'desc' } });
  return rows.map((row) => ({
    number: row.number,
    codeVersion: row.codeVersion,
    pullCount: LogAnalysis.parse(row.analysis).pulls.length,
    reason: row.reason,
    madeBy: row.madeBy,
    madeAt: row.madeAt.toISOString(),
  }));
}
