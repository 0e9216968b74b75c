import type { FastifyRequest } from 'fastify';
import { DomainError } from '../plumbing/domain-error.js';

/** A file on its way in. */
export interface UploadedFile {
  readonly fileName: string;
  readonly pieces: AsyncIterable<Uint8Array>;
}

/**
 * The file of a request, as a form's part or as the body itself.
 *
 * @param fileName what to call a file that comes without a name
 * @throws DomainError invalid-request for a form without a file
 */
export async function uploadedFile(request: FastifyRequest, fileName: string): Promise<UploadedFile> {
  if (!request.isMultipart()) return { fileName, pieces: request.raw };
  const part = await request.file({ limits: { fileSize: Number.MAX_SAFE_INTEGER } });
  if (part === undefined) {
    const message = 'the form holds no file';
    throw new DomainError('invalid-request', message, { errors: [{ field: 'file', message }] });
  }
  return { fileName: part.filename || fileName, pieces: part.file };
}
