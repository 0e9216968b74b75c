const SPACE = 32;
const QUOTE = 34;

/** Bytes as text, one letter a byte: enough for numbers and for telling words from them. */
export function latinText(bytes: Uint8Array, start: number, end: number): string {
  let text = '';
  for (let at = start; at < end; at += 1) text += String.fromCharCode(bytes[at] as number);
  return text;
}

/** A cell, where the next one starts, and whether the record ends between them. */
export interface QuotedCell {
  readonly text: string;
  readonly next: number;
  readonly endsRow: boolean;
}

/**
 * The cell that starts at `start`, quoted or not; null where the bytes at hand do not reach its end.
 * Source: RFC 4180, section 2.
 */
export function readQuotedCell(
  bytes: Uint8Array,
  start: number,
  delimiter: number,
  lineEnd: number,
): QuotedCell | null {
  let at = start;
  let text = '';
  let isOpen = false;
  for (; at < bytes.length; at += 1) {
    const byte = bytes[at] as number;
    if (byte === QUOTE) {
      if (isOpen && bytes[at + 1] === QUOTE) {
        text += '"';
        at += 1;
      } else if (isOpen || at === start) isOpen = !isOpen;
      else text += '"';
    } else if (!isOpen && (byte === delimiter || byte === lineEnd)) {
      return { text, next: at + 1, endsRow: byte === lineEnd };
    } else text += String.fromCharCode(byte);
  }
  return null;
}

/** True where nothing but spaces and delimiters stands between two places: a row may end in empty cells. O(end - start). */
export function isBlank(bytes: Uint8Array, start: number, end: number, delimiter: number): boolean {
  for (let at = start; at < end; at += 1) {
    if (bytes[at] !== SPACE && bytes[at] !== delimiter) return false;
  }
  return true;
}
