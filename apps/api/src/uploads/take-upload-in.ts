import type { LogFromUpload } from '@pullbook/contracts';
import { recordLog, type RecordedLog } from '../logs/record-log.js';
import type { Actor } from '../plumbing/actor.js';
import type { ObjectStore } from '../plumbing/object-store.js';
import type { Uploads } from './open-uploads.js';

/**
 * Takes an uploaded file into a tuning session as a log. A file that cannot be read stays, so that somebody can say
 * how it is to be read without sending it again.
 *
 * @throws DomainError not-found, conflict for an upload that is not whole, and the refusals of `recordLog`
 */
export async function takeUploadIn(
  actor: Actor,
  { objects, uploads }: { readonly objects: ObjectStore; readonly uploads: Uploads },
  sessionId: string,
  { uploadId, reading }: LogFromUpload,
): Promise<RecordedLog> {
  const { fileName, pieces } = await uploads.get(actor, uploadId);
  const recorded = await recordLog(actor, objects, sessionId, { fileName, pieces: pieces(), reading });
  await uploads.drop(uploadId);
  return recorded;
}
