import type * as rows from '@pullbook/database';
import type { WorkshopTransaction } from '@pullbook/database';

type BoardPull = Pick<
  rows.Pull,
  | 'presetId'
  | 'number'
  | 'dutyPct'
  | 'holdPct'
  | 'peakKpa'
  | 'usable'
  | 'heatSoaked'
  | 'overrideOn'
  | 'heldForS'
  | 'voidedAt'
  | 'foundSoundAt'
>;

/** A visit as the board reads it. */
export type BoardVisit = rows.Visit & {
  car: rows.Car & { customer: Pick<rows.Customer, 'name'> };
  tuner: Pick<rows.Member, 'name'> | null;
  reportLinks: Pick<rows.ReportLink, 'openedCount'>[];
  /** The newest one, if any. */
  tuningSessions: rows.TuningSession[];
  pulls: BoardPull[];
};

const boardParts = {
  car: { include: { customer: { select: { name: true } } } },
  tuner: { select: { name: true } },
  reportLinks: { where: { revokedAt: null }, select: { openedCount: true } },
  tuningSessions: { orderBy: { number: 'desc' }, take: 1 },
  pulls: {
    orderBy: { number: 'asc' },
    select: {
      ...{ presetId: true, number: true, dutyPct: true, holdPct: true, peakKpa: true },
      ...{
        usable: true,
        heatSoaked: true,
        overrideOn: true,
        heldForS: true,
        voidedAt: true,
        foundSoundAt: true,
      },
    },
  },
} as const;

/** These visits with what their cards show, in the order of the ids, in a number of queries that does not grow. */
export async function loadBoardVisits(
  db: WorkshopTransaction,
  ids: readonly string[],
): Promise<BoardVisit[]> {
  const rows: BoardVisit[] = await db.visit.findMany({
    where: { id: { in: [...ids] } },
    include: boardParts,
  });
  const byId = new Map(rows.map((row) => [row.id, row]));
  return ids.flatMap((id) => byId.get(id) ?? []);
}
