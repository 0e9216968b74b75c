import type { OpenSession, WaitingLog, WaitingLogList } from '@pullbook/contracts';
import type { WorkshopTransaction } from '@pullbook/database';
import { LogError, matchRecipe, readLogHead, type KnownRecipe } from '@pullbook/tuning-math';
import { findRecipes } from '../channel-recipes/find-recipes.js';
import type { Actor } from '../plumbing/actor.js';
import { findOpenSessions } from './find-open-sessions.js';
import { HEAD_BYTES } from './look-at-upload.js';
import type { Upload, Uploads } from './open-uploads.js';
import { suggestSessions } from './suggest-sessions.js';

interface Around {
  readonly sessions: readonly OpenSession[];
  readonly recipes: readonly (KnownRecipe & { readonly name: string })[];
  readonly carsOfRecipe: ReadonlyMap<string, ReadonlySet<string>>;
}

/**
 * The files of the workshop that came in whole and belong to no tuning session yet, in the order in which they came,
 * each with the sessions that it may belong to. Nothing is assigned by it.
 */
export async function findWaitingLogs(actor: Actor, uploads: Uploads): Promise<WaitingLogList> {
  const { db } = actor;
  const sessions = await findOpenSessions(db);
  const recipes = (await findRecipes(db)).map(({ id, name, shape, reading }) => ({
    id,
    name,
    shape,
    recipe: reading,
  }));
  const around = { sessions, recipes, carsOfRecipe: await findCarsOfRecipes(db, sessions) };
  const items: WaitingLog[] = [];
  for (const upload of await uploads.list(actor)) {
    const sha256 = await upload.sha256();
    const sameAsUploadId = items.find((item) => item.sha256 === sha256)?.uploadId ?? null;
    items.push({ ...(await tell(upload, around)), sha256, sameAsUploadId });
  }
  return { items: await addOnRecord(db, items), sessions };
}

type Told = Omit<WaitingLog, 'sha256' | 'sameAsUploadId'>;

async function tell(upload: Upload, around: Around): Promise<Told> {
  const head = await upload.head(HEAD_BYTES);
  const found = matchRecipe(head, around.recipes);
  const { fileName, byteCount, writtenAt, uploadedAt } = upload;
  const carsOfRecipe = around.carsOfRecipe.get(found?.id ?? '') ?? new Set<string>();
  return {
    uploadId: upload.id,
    fileName,
    byteCount,
    uploadedAt: uploadedAt.toISOString(),
    writtenAt: writtenAt?.toISOString() ?? null,
    recipeName: around.recipes.find(({ id }) => id === found?.id)?.name ?? null,
    problem: problemOf(head),
    onRecord: [],
    ...suggestSessions({ fileName, writtenAt, carsOfRecipe }, around.sessions),
  };
}

function problemOf(head: Uint8Array): string | null {
  try {
    readLogHead(head, null);
    return null;
  } catch (error) {
    if (!(error instanceof LogError)) throw error;
    return `${error.message}; ${error.hint}`;
  }
}

/** Which cars with an open session have logs that were read by each recipe. */
async function findCarsOfRecipes(
  db: WorkshopTransaction,
  sessions: readonly OpenSession[],
): Promise<Map<string, Set<string>>> {
  const carId = { in: sessions.map((session) => session.carId) };
  const rows = await db.logVersion.findMany({
    where: { recipeId: { not: null }, log: { tuningSession: { visit: { carId } } } },
    distinct: ['recipeId', 'logId'],
    orderBy: { id: 'asc' },
    select: {
      recipeId: true,
      log: { select: { tuningSession: { select: { visit: { select: { carId: true } } } } } },
    },
  });
  const cars = new Map<string, Set<string>>();
  for (const { recipeId, log } of rows) {
    const ofRecipe = cars.get(recipeId ?? '') ?? new Set<string>();
    cars.set(recipeId ?? '', ofRecipe.add(log.tuningSession.visit.carId));
  }
  return cars;
}

async function addOnRecord(db: WorkshopTransaction, items: readonly WaitingLog[]): Promise<WaitingLog[]> {
  const rows = await db.log.findMany({
    where: { sha256: { in: items.map(({ sha256 }) => sha256) } },
    orderBy: [{ recordedAt: 'asc' }, { id: 'asc' }],
    select: {
      id: true,
      sha256: true,
      tuningSessionId: true,
      tuningSession: { select: { visit: { select: { id: true, car: { select: { plate: true } } } } } },
    },
  });
  return items.map((item) => ({
    ...item,
    onRecord: rows
      .filter(({ sha256 }) => sha256 === item.sha256)
      .map(({ id, tuningSessionId, tuningSession: { visit } }) => ({
        logId: id,
        tuningSessionId,
        visitId: visit.id,
        plate: visit.car.plate,
      })),
  }));
}
