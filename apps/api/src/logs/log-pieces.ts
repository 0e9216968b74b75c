import { DomainError } from '../plumbing/domain-error.js';

/** Largest log that is taken in. */
export const MOST_LOG_BYTES = 1 << 30;
/** How much of a larger one is read to its end before the refusal, so that the sender gets to read it. */
const MOST_SWALLOWED_SHARE = 1.25;

/**
 * The pieces of an upload as long as they stay within the limit.
 *
 * @throws DomainError too-large, naming the limit
 */
export async function* logPieces(
  pieces: AsyncIterable<Uint8Array>,
  mostBytes: number = MOST_LOG_BYTES,
): AsyncGenerator<Uint8Array> {
  let byteCount = 0;
  for await (const piece of pieces) {
    byteCount += piece.byteLength;
    if (byteCount <= mostBytes) yield piece;
    if (byteCount > MOST_SWALLOWED_SHARE * mostBytes) break;
  }
  if (byteCount <= mostBytes) return;
  const message = `a log may have up to ${mostBytes >> 20} MB; split it, or leave out the parts without pulls`;
  throw new DomainError('too-large', message, { errors: [{ field: 'file', message }] });
}
