import { stages, type BoardQuery, type Stage, type StageCounts } from '@pullbook/contracts';
import type { WorkshopTransaction } from '@pullbook/database';
import { searchText, searchWords } from '../plumbing/search-text.js';

/** Which visits the board shows, stage by stage, and what it tells of all that match. */
export interface ChosenVisits {
  readonly ids: readonly string[];
  readonly counts: StageCounts;
  readonly tuners: string[];
}

/** Picks the visits that are wanted soonest of each stage, by words and tuner; reads no more of a row than its id. */
export async function chooseVisits(db: WorkshopTransaction, query: BoardQuery): Promise<ChosenVisits> {
  const shown = stages.filter((stage) => query.collected || stage !== 'collected');
  const inHouse = { stage: { in: shown } };
  const held = await db.visit.groupBy({
    by: ['tunerId', 'bay'],
    where: inHouse,
    orderBy: { tunerId: 'asc' },
  });
  const people = await db.member.findMany({ select: { id: true, name: true }, orderBy: { name: 'asc' } });
  const where = { AND: [...wordsOf(query, held), tunerOf(query, people)] };
  const sums = await db.visit.groupBy({
    by: ['stage'],
    where: { ...where, ...inHouse },
    _count: { _all: true },
    orderBy: { stage: 'asc' },
  });
  const lanes = await Promise.all(shown.map((stage) => idsOf(db, { ...where, stage }, query.perStage)));
  const countOf = (stage: Stage): number => sums.find((sum) => sum.stage === stage)?._count._all ?? 0;
  return {
    ids: lanes.flat(),
    counts: Object.fromEntries(stages.map((stage) => [stage, countOf(stage)])) as StageCounts,
    tuners: people.filter(({ id }) => held.some(({ tunerId }) => tunerId === id)).map(({ name }) => name),
  };
}

interface LaneFilter {
  readonly stage: Stage;
  readonly AND: object[];
}

async function idsOf(db: WorkshopTransaction, where: LaneFilter, take: number): Promise<string[]> {
  const soonest = { sort: 'asc', nulls: 'last' } as const;
  const first = { booked: [{ bookedFor: soonest }], collected: [] }[where.stage as string] ?? [
    { promisedAt: soonest },
  ];
  const orderBy = [...first, { number: 'desc' as const }, { id: 'desc' as const }];
  const rows = await db.visit.findMany({ where, orderBy, take, select: { id: true } });
  return rows.map(({ id }) => id);
}

/** Bays are few: those that have the word are named one by one, so that both databases find the same. */
function wordsOf({ q }: BoardQuery, held: readonly { readonly bay: string | null }[]): object[] {
  return searchWords(q).map((word) => {
    const contains = { searchText: { contains: word } };
    const bays = held.map(({ bay }) => bay).filter((bay) => bay !== null && searchText(bay).includes(word));
    const number = /^\d{1,9}$/.test(word) ? [{ number: Number(word) }] : [];
    return {
      OR: [{ car: { OR: [contains, { customer: contains }] } }, { bay: { in: bays } }, ...number],
    };
  });
}

function tunerOf(
  { tuner }: BoardQuery,
  people: readonly { readonly id: string; readonly name: string }[],
): object {
  if (tuner === '') return {};
  return { tunerId: { in: people.filter(({ name }) => name === tuner).map(({ id }) => id) } };
}
