import type { UploadLook, UploadLookBody } from '@pullbook/contracts';
import { LogError, matchRecipe, readLogHead, readLogLines, type ChannelRecipe } from '@pullbook/tuning-math';
import { checkReading } from '../channel-recipes/check-reading.js';
import { knownRecipes } from '../logs/known-recipes.js';
import type { Actor } from '../plumbing/actor.js';
import type { Uploads } from './open-uploads.js';

/** How much of a file is read to tell what it is. */
export const HEAD_BYTES = 1 << 16;
const MOST_LINES = 12;
const LONGEST_LINE = 400;

/**
 * What the first lines of an uploaded log show: under a reading that somebody tries, else under the workshop's recipe
 * for its shape, else as recognised. Nothing is computed or recorded.
 *
 * @throws DomainError not-found, conflict for an upload that is not whole, invalid-request for a unit that cannot be
 */
export async function lookAtUpload(
  actor: Actor,
  uploads: Uploads,
  uploadId: string,
  { reading }: UploadLookBody,
): Promise<UploadLook> {
  if (reading) checkReading(reading, 'reading');
  const upload = await uploads.get(actor, uploadId);
  const head = await upload.head(HEAD_BYTES);
  const found = reading ? null : matchRecipe(head, await knownRecipes(actor.db));
  return {
    fileName: upload.fileName,
    byteCount: upload.byteCount,
    recipeId: found?.id ?? null,
    ...tellHead(head, reading ?? found?.recipe ?? null),
  };
}

type HeadTold = Omit<UploadLook, 'fileName' | 'byteCount' | 'recipeId'>;

function tellHead(bytes: Uint8Array, recipe: ChannelRecipe | null): HeadTold {
  const lines = linesOf(bytes);
  try {
    const { shape, columns, delimiter, decimalMark } = readLogHead(bytes, recipe);
    const { headers, unitTexts, hasHeader } = shape;
    return {
      lines,
      shape: { headers: [...headers], unitTexts: [...unitTexts], hasHeader },
      columns: columns.map((column) => ({ ...column, samples: [...column.samples] })),
      delimiter,
      decimalMark,
      problem: null,
    };
  } catch (error) {
    if (!(error instanceof LogError)) throw error;
    const problem = `${error.message}; ${error.hint}`;
    return { lines, shape: null, columns: [], delimiter: null, decimalMark: null, problem };
  }
}

function linesOf(bytes: Uint8Array): string[] {
  try {
    return readLogLines(bytes, MOST_LINES).map((line) => line.slice(0, LONGEST_LINE));
  } catch (error) {
    if (error instanceof LogError) return [];
    throw error;
  }
}
