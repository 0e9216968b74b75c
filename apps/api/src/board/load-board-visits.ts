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

/** Collected visits that the board shows when it is asked for them: the newest ones. */
const mostCollected = 200;

const boardParts = {
  car: { include: { customer: { select: { name: true } } } },
  tuner: { select: { name: true } },
  reportLinks: { where: { revokedAt: null }, select: { openedCount: true } },
  tuningSessions: { orderBy: { number: 'desc' }, take: 1 },
  pulls: {
    orderBy: { number: 'asc' },
    select: {
      ...{ presetId: true, number: true, dutyPct: true, holdPct: true, peakKpa: true },
      ...{ usable: true, heatSoaked: true, overrideOn: true, heldForS: true, voidedAt: true },
    },
  },
} as const;

/** All visits of the board with what their cards show, in a number of queries that does not grow with them. */
export async function loadBoardVisits(
  db: WorkshopTransaction,
  withCollected: boolean,
): Promise<BoardVisit[]> {
  const open = await readVisits(db, { stage: { not: 'collected' } }, undefined);
  if (!withCollected) return open;
  return [...open, ...(await readVisits(db, { stage: 'collected' }, mostCollected))];
}

type StageFilter = { stage: string | { not: string } };

function readVisits(
  db: WorkshopTransaction,
  where: StageFilter,
  take: number | undefined,
): Promise<BoardVisit[]> {
  return db.visit.findMany({
    where,
    orderBy: [{ number: 'desc' }, { id: 'desc' }],
    include: boardParts,
    ...(take === undefined ? {} : { take }),
  });
}
