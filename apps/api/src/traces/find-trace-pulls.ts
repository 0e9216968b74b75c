import type { TracePull } from '@pullbook/contracts';
import type { Actor } from '../plumbing/actor.js';
import type { TracedLog } from './load-traced-log.js';

/** The pulls of a log in their order, with the record of those that were taken in. */
export async function findTracePulls({ db }: Actor, { id, analysis }: TracedLog): Promise<TracePull[]> {
  const records = await findRecords(db, id);
  return analysis.pulls.map((pull, index) => ({
    index,
    startS: pull.startS,
    endS: pull.endS,
    gear: pull.gear,
    peakKpa: pull.peakKpa,
    settledKpa: pull.settledKpa,
    usable: pull.usable,
    reasons: pull.reasons.map(({ code, text }) => ({ code, text })),
    record: records.get(index) ?? null,
  }));
}

async function findRecords(db: Actor['db'], logId: string): Promise<Map<number, TracePull['record']>> {
  const pulls = await db.pull.findMany({
    where: { logId, logPullIndex: { not: null }, voidedAt: null },
    orderBy: [{ logPullIndex: 'asc' }, { id: 'asc' }],
    select: {
      id: true,
      number: true,
      dutyPct: true,
      logPullIndex: true,
      presetId: true,
      presetRevision: true,
      preset: { select: { revisions: true } },
    },
  });
  return new Map(
    pulls.map(({ id, number, dutyPct, logPullIndex, presetId, presetRevision, preset }) => {
      const then = preset.revisions.find(({ revision }) => revision === presetRevision);
      const goal = {
        presetName: then?.name ?? '',
        targetKpa: then?.targetKpa ?? null,
        ceilingKpa: then?.ceilingKpa ?? null,
      };
      return [logPullIndex ?? -1, { pullId: id, number, presetId, dutyPct, ...goal }];
    }),
  );
}
