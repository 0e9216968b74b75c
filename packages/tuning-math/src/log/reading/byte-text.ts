import type { LogLayout } from '../log-samples.js';
import { detectEncoding } from './detect-encoding.js';

/** The bytes of a text file as one-byte-per-ASCII-letter text without byte order mark, piece by piece. */
export interface ByteText {
  readonly encoding: LogLayout['encoding'];
  push(chunk: Uint8Array): Uint8Array;
  finish(): Uint8Array;
  /** The first pieces as a string, for header and units. */
  decodeHead(head: Uint8Array): string;
}

/**
 * Makes any encoding that loggers write into bytes whose digits, delimiters and line ends are ASCII.
 * UTF-8 and one-byte text pass through untouched, UTF-16 is recoded.
 *
 * @param head first bytes of the file
 * @throws LogError `not-text`
 */
export function byteText(head: Uint8Array): ByteText {
  const { encoding, markByteCount } = detectEncoding(head);
  const headLabel = encoding === 'windows-1252' ? 'windows-1252' : 'utf-8';
  const decodeHead = (bytes: Uint8Array): string => new TextDecoder(headLabel).decode(bytes);
  if (encoding === 'utf-8' || encoding === 'windows-1252') {
    let markLeft = markByteCount;
    const push = (chunk: Uint8Array): Uint8Array => {
      const bytes = markLeft === 0 ? chunk : chunk.subarray(markLeft);
      markLeft = 0;
      return bytes;
    };
    return { encoding, push, finish: () => new Uint8Array(0), decodeHead };
  }
  const decoder = new TextDecoder(encoding);
  const encoder = new TextEncoder();
  return {
    encoding,
    push: (chunk) => encoder.encode(decoder.decode(chunk, { stream: true })),
    finish: () => encoder.encode(decoder.decode()),
    decodeHead,
  };
}
