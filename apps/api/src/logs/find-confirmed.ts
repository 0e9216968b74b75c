import { LogAnalysis, type Log } from '@pullbook/contracts';
import type { WorkshopTransaction } from '@pullbook/database';
import type { LogRecord } from './load-log.js';

interface Span {
  readonly startS: number;
  readonly endS: number;
}

/**
 * Which pulls of a version of a log are in the book. One that was taken from another version is the pull of this one
 * that covers most of the same time, and at least half of the shorter of the two: another filter or threshold moves
 * its ends, but it is the same stretch of road.
 */
export async function findConfirmed(
  db: WorkshopTransaction,
  log: Pick<LogRecord, 'id' | 'pulls'>,
  { number, pulls }: { readonly number: number; readonly pulls: readonly Span[] },
): Promise<Log['confirmed']> {
  const spansOf = await spansByVersion(db, log, number);
  const confirmed = log.pulls.flatMap(({ id: pullId, logPullIndex, logVersion }) => {
    if (logPullIndex === null) return [];
    if (logVersion === number) return [{ index: logPullIndex, pullId }];
    const span = spansOf.get(logVersion ?? 0)?.[logPullIndex];
    const index = span === undefined ? -1 : samePull(span, pulls);
    return index < 0 ? [] : [{ index, pullId }];
  });
  return confirmed.sort((a, b) => a.index - b.index);
}

async function spansByVersion(
  db: WorkshopTransaction,
  { id, pulls }: Pick<LogRecord, 'id' | 'pulls'>,
  number: number,
): Promise<Map<number, readonly Span[]>> {
  const others = pulls.flatMap(({ logVersion, logPullIndex }) =>
    logVersion === null || logPullIndex === null || logVersion === number ? [] : [logVersion],
  );
  if (others.length === 0) return new Map();
  const rows = await db.logVersion.findMany({
    where: { logId: id, number: { in: [...new Set(others)] } },
    select: { number: true, analysis: true },
  });
  return new Map(rows.map((row) => [row.number, LogAnalysis.parse(row.analysis).pulls]));
}

const LEAST_SHARE = 0.5;

function samePull(wanted: Span, pulls: readonly Span[]): number {
  const shares = pulls.map((pull) => {
    const together = Math.min(pull.endS, wanted.endS) - Math.max(pull.startS, wanted.startS);
    return together / Math.min(pull.endS - pull.startS, wanted.endS - wanted.startS);
  });
  const best = shares.indexOf(Math.max(...shares));
  return (shares[best] ?? 0) >= LEAST_SHARE ? best : -1;
}
