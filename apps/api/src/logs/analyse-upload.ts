import { LogAnalysis } from '@pullbook/contracts';
import type { ObjectStore } from '../plumbing/object-store.js';
import { analyseOffThread } from './analyse-off-thread.js';
import { logPieces } from './log-pieces.js';
import type { UploadedFile } from './uploaded-file.js';

/**
 * Analyses a log and keeps nothing of it.
 *
 * @throws DomainError too-large, log-unreadable
 */
export async function analyseUpload(objects: ObjectStore, { pieces }: UploadedFile): Promise<LogAnalysis> {
  const received = await objects.receive(logPieces(pieces));
  try {
    return LogAnalysis.parse((await analyseOffThread(received.file, {})).analysis);
  } finally {
    await received.drop();
  }
}
