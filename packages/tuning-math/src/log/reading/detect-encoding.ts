import { LogError } from '../log-error.js';
import type { LogLayout } from '../log-samples.js';

/** How the bytes of a file become text, and how many bytes of byte order mark to leave out. */
export interface DetectedEncoding {
  readonly encoding: LogLayout['encoding'];
  readonly markByteCount: number;
}

const BYTE_ORDER_MARKS = [
  { bytes: [0xef, 0xbb, 0xbf], encoding: 'utf-8' },
  { bytes: [0xff, 0xfe], encoding: 'utf-16le' },
  { bytes: [0xfe, 0xff], encoding: 'utf-16be' },
] as const;
const MAX_CONTROL_SHARE = 0.02;

/**
 * Encoding of a text file from its first bytes: byte order mark, else the place of the zero bytes that
 * UTF-16 leaves between ASCII letters, else UTF-8 if it is valid, else Windows-1252.
 *
 * @param head first bytes of the file, up to some ten thousand
 * @throws LogError `not-text` where the bytes cannot be text
 * Source: Unicode 16, chapter 2.13 for the marks; the rest common practice, no source.
 */
export function detectEncoding(head: Uint8Array): DetectedEncoding {
  for (const mark of BYTE_ORDER_MARKS) {
    if (mark.bytes.every((byte, index) => head[index] === byte)) {
      return { encoding: mark.encoding, markByteCount: mark.bytes.length };
    }
  }
  const wide = wideEncoding(head);
  if (wide !== null) return { encoding: wide, markByteCount: 0 };
  refuseBinary(head);
  return { encoding: isUtf8(head) ? 'utf-8' : 'windows-1252', markByteCount: 0 };
}

function wideEncoding(head: Uint8Array): 'utf-16le' | 'utf-16be' | null {
  let evenZeros = 0;
  let oddZeros = 0;
  for (let index = 0; index < head.length; index += 1) {
    if (head[index] !== 0) continue;
    if (index % 2 === 0) evenZeros += 1;
    else oddZeros += 1;
  }
  const half = head.length / 2;
  if (half < 2) return null;
  if (oddZeros > 0.7 * half && evenZeros < 0.05 * half) return 'utf-16le';
  if (evenZeros > 0.7 * half && oddZeros < 0.05 * half) return 'utf-16be';
  return null;
}

function refuseBinary(head: Uint8Array): void {
  const controls = head.reduce((count, byte) => count + (isControl(byte) ? 1 : 0), 0);
  const packed = startsWith(head, 'PK') || (head[0] === 0x1f && head[1] === 0x8b);
  if (!packed && controls <= MAX_CONTROL_SHARE * head.length) return;
  throw new LogError(
    'not-text',
    packed ? 'the file is packed or a workbook, not a text file' : 'the file is not a text file',
    'export the log as CSV (values separated by comma, semicolon or tab) and drop that file',
  );
}

function isControl(byte: number): boolean {
  return byte < 9 || (byte > 13 && byte < 32);
}

function startsWith(head: Uint8Array, letters: string): boolean {
  return [...letters].every((letter, index) => head[index] === letter.charCodeAt(0));
}

function isUtf8(head: Uint8Array): boolean {
  try {
    // A head may end inside a character: `stream` leaves that for the next call.
    new TextDecoder('utf-8', { fatal: true }).decode(head, { stream: true });
    return true;
  } catch (fault) {
    if (fault instanceof TypeError) return false;
    throw fault;
  }
}
