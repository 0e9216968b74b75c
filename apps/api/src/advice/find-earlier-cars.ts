import { Mechanics, type EarlierCar } from '@pullbook/contracts';
import type { WorkshopTransaction } from '@pullbook/database';
import { pullsAtBaseHold } from '@pullbook/next-pull';
import type { PresetRecord } from '../presets/load-presets.js';

/** More would not sharpen the advice further. */
const MOST_CARS = 8;
/** Most that is read of one car, newest visit first. */
const MOST_PULLS = 60;

const pullFields = { visitId: true, dutyPct: true, holdPct: true, peakKpa: true, usable: true } as const;

/**
 * What earlier cars of a preset's build left in the book: cars with the same build code and controller, the newest
 * first, each with the usable pulls of its best measured preset of this kind, which must have been signed off.
 * Empty where the car has no build code: nothing is guessed from the model's name.
 */
export async function findEarlierCars(
  db: WorkshopTransaction,
  { car, values }: PresetRecord,
): Promise<EarlierCar[]> {
  const { buildCode, controllerId } = await db.car.findUniqueOrThrow({
    where: { id: car.id },
    select: { buildCode: true, controllerId: true },
  });
  if (buildCode === null || buildCode === '') return [];
  const rows = await db.car.findMany({
    where: {
      buildCode,
      controllerId,
      id: { not: car.id },
      presets: { some: { signedOffRevision: { not: null } } },
    },
    orderBy: [{ createdAt: 'desc' }, { id: 'desc' }],
    take: MOST_CARS,
    select: {
      mechanics: true,
      presets: {
        where: { signedOffRevision: { not: null } },
        orderBy: { id: 'asc' },
        select: {
          revisions: { orderBy: { revision: 'desc' }, take: 1, select: { kind: true, gateHoldPct: true } },
          pulls: {
            where: { voidedAt: null },
            orderBy: [{ visit: { number: 'desc' } }, { number: 'asc' }],
            take: MOST_PULLS,
            select: pullFields,
          },
        },
      },
    },
  });
  return rows.flatMap(({ mechanics, presets }) => {
    const pulls = bestMeasured(presets, values.kind);
    const baseKpa = Mechanics.parse(mechanics).actuatorSpringKpa;
    return pulls.length === 0 ? [] : [{ baseKpa, pulls }];
  });
}

interface MeasuredPreset {
  readonly revisions: readonly { readonly kind: string; readonly gateHoldPct: number | null }[];
  readonly pulls: readonly MeasuredPull[];
}

interface MeasuredPull {
  readonly visitId: string;
  readonly dutyPct: number;
  readonly holdPct: number | null;
  readonly peakKpa: number;
  readonly usable: boolean;
}

/** The pulls that tell most of what duty does: those of one preset in its newest visit, at its own gate hold. */
function bestMeasured(presets: readonly MeasuredPreset[], kind: string): EarlierCar['pulls'] {
  let best: EarlierCar['pulls'] = [];
  for (const { revisions, pulls } of presets) {
    const [newest] = revisions;
    if (newest?.kind !== kind) continue;
    const ofVisit = pulls.filter(({ visitId }) => visitId === pulls[0]?.visitId);
    const told = pullsAtBaseHold(ofVisit, newest.gateHoldPct);
    if (told.length > best.length)
      best = told.map(({ dutyPct, peakKpa }) => ({ duty: dutyPct, peakKpa: Math.max(0, peakKpa) }));
  }
  return best;
}
