/** One record of a delimited text and the physical line that it starts on, from 0. */
export interface TextRecord {
  readonly cells: readonly string[];
  readonly line: number;
  readonly lineCount: number;
}

const QUOTE = '"';

/**
 * Records of a delimited text: for the few lines at the head of a log whose layout is still unknown.
 * Quoted cells may hold delimiters, line breaks and doubled quotes; a quote inside an unquoted cell is
 * data; an unclosed quote ends with the text.
 *
 * @param text decoded text
 * @param delimiter one character
 * @param maxRecords stop after so many
 * Source: RFC 4180, section 2. Cost: O(length of text).
 */
export function splitRecords(text: string, delimiter: string, maxRecords: number): TextRecord[] {
  const records: TextRecord[] = [];
  let position = 0;
  let line = 0;
  while (position < text.length && records.length < maxRecords) {
    const record = readRecord(text, position, delimiter);
    records.push({ cells: record.cells, line, lineCount: record.lineCount });
    line += record.lineCount;
    position = record.next;
  }
  return records;
}

interface ReadRecord {
  readonly cells: string[];
  readonly next: number;
  readonly lineCount: number;
}

function readRecord(text: string, start: number, delimiter: string): ReadRecord {
  const cells: string[] = [];
  let lineCount = 1;
  let position = start;
  for (;;) {
    const cell = text[position] === QUOTE ? readQuoted(text, position) : null;
    const from = cell?.next ?? position;
    const end = plainEnd(text, from, delimiter);
    const plain = text.slice(from, end);
    cells.push(cell === null ? plain.trim() : (cell.value + plain).trim());
    if (cell !== null) lineCount += cell.lineBreakCount;
    if (text[end] !== delimiter) return { cells, next: afterBreak(text, end), lineCount };
    position = end + 1;
  }
}

function readQuoted(text: string, start: number): { value: string; next: number; lineBreakCount: number } {
  let close = text.indexOf(QUOTE, start + 1);
  while (close !== -1 && text[close + 1] === QUOTE) close = text.indexOf(QUOTE, close + 2);
  const end = close === -1 ? text.length : close;
  const inside = text.slice(start + 1, end);
  return {
    value: inside.replaceAll('""', QUOTE),
    next: Math.min(end + 1, text.length),
    lineBreakCount: inside.match(/\r\n|\n|\r/g)?.length ?? 0,
  };
}

function plainEnd(text: string, start: number, delimiter: string): number {
  let end = start;
  while (end < text.length) {
    const letter = text[end];
    if (letter === delimiter || letter === '\n' || letter === '\r') break;
    end += 1;
  }
  return end;
}

function afterBreak(text: string, end: number): number {
  return text[end] === '\r' && text[end + 1] === '\n' ? end + 2 : end + 1;
}
