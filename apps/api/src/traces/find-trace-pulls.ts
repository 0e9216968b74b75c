import type { TracePull } from '@pullbook/contracts';
import { findConfirmed } from '../logs/find-confirmed.js';
import type { Actor } from '../plumbing/actor.js';
import { presentNotice } from './present-notice.js';
import type { TracedLog } from './load-traced-log.js';

/** The pulls of a log in their order, with the record of those that were taken in. */
export async function findTracePulls({ db }: Actor, log: TracedLog): Promise<TracePull[]> {
  const { analysis } = log;
  const records = await findRecords(db, log);
  return analysis.pulls.map((pull, index) => ({
    index,
    startS: pull.startS,
    endS: pull.endS,
    gear: pull.gear,
    peakKpa: pull.peakKpa,
    settledKpa: pull.settledKpa,
    usable: pull.usable,
    reasons: pull.reasons.map(presentNotice),
    record: records.get(index) ?? null,
  }));
}

async function findRecords(
  db: Actor['db'],
  { id, analysis, version }: TracedLog,
): Promise<Map<number, TracePull['record']>> {
  const pulls = await db.pull.findMany({
    where: { logId: id, logPullIndex: { not: null }, voidedAt: null },
    orderBy: [{ logPullIndex: 'asc' }, { id: 'asc' }],
    select: {
      id: true,
      number: true,
      dutyPct: true,
      logPullIndex: true,
      logVersion: true,
      presetId: true,
      presetRevision: true,
      preset: { select: { revisions: true } },
    },
  });
  const confirmed = await findConfirmed(db, { id, pulls }, { number: version, pulls: analysis.pulls });
  const indexOf = new Map(confirmed.map(({ index, pullId }) => [pullId, index]));
  return new Map(
    pulls.map(({ id: pullId, number, dutyPct, presetId, presetRevision, preset }) => {
      const then = preset.revisions.find(({ revision }) => revision === presetRevision);
      const goal = {
        presetName: then?.name ?? '',
        targetKpa: then?.targetKpa ?? null,
        toleranceKpa: then?.toleranceKpa ?? 0,
        ceilingKpa: then?.ceilingKpa ?? null,
      };
      return [indexOf.get(pullId) ?? -1, { pullId, number, presetId, dutyPct, ...goal }];
    }),
  );
}
