import { LogAnalysis, type LogHead } from '@pullbook/contracts';
import type { Actor } from '../plumbing/actor.js';
import { DomainError } from '../plumbing/domain-error.js';
import { findConfirmed } from './find-confirmed.js';
import { loadLogs } from './load-log.js';

/**
 * All logs of a visit, each in a line: session by session, in the order in which they came in.
 *
 * @throws DomainError not-found
 */
export async function findLogHeads({ db }: Pick<Actor, 'db'>, visitId: string): Promise<LogHead[]> {
  const visit = await db.visit.findFirst({
    where: { id: visitId },
    select: { tuningSessions: { select: { id: true }, orderBy: [{ number: 'asc' }, { id: 'asc' }] } },
  });
  if (visit === null) throw new DomainError('not-found', 'this workshop has no such visit');
  const heads: LogHead[] = [];
  for (const { id: tuningSessionId } of visit.tuningSessions) {
    for (const log of await loadLogs(db, { tuningSessionId })) {
      const { pulls } = LogAnalysis.parse(log.newest.analysis);
      const confirmed = await findConfirmed(db, log, { number: log.newest.number, pulls });
      heads.push({
        id: log.id,
        tuningSessionId,
        fileName: log.fileName,
        byteCount: log.byteCount,
        pullCount: pulls.length,
        confirmedCount: confirmed.length,
        recordedAt: log.recordedAt.toISOString(),
      });
    }
  }
  return heads;
}
