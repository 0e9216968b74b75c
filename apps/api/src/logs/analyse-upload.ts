import { LogAnalysis } from '@pullbook/contracts';
import { readLogSettings } from '../log-settings/read-log-settings.js';
import type { Actor } from '../plumbing/actor.js';
import type { ObjectStore } from '../plumbing/object-store.js';
import { analyseOffThread } from './analyse-off-thread.js';
import { knownRecipes } from './known-recipes.js';
import { logPieces } from './log-pieces.js';
import type { UploadedFile } from './uploaded-file.js';

/**
 * Analyses a log by the workshop's settings and recipes, and keeps nothing of it.
 *
 * @throws DomainError too-large, log-unreadable
 */
export async function analyseUpload(
  { db, workshopId }: Actor,
  objects: ObjectStore,
  { pieces }: UploadedFile,
): Promise<LogAnalysis> {
  const { settings } = await readLogSettings(db, workshopId);
  const recipes = await knownRecipes(db);
  const received = await objects.receive(logPieces(pieces));
  try {
    const { file, byteCount } = received;
    const analysed = await analyseOffThread({ file, byteCount, options: { settings }, recipes });
    return LogAnalysis.parse(analysed.analysis);
  } finally {
    await received.drop();
  }
}
