import { endlessLine } from './endless-line.js';
import { joinBytes } from './join-bytes.js';
import { parseCell } from './parse-cell.js';
import { isBlank, latinText, readQuotedCell } from './quoted-cell.js';
import type { ScanCounts, ScanLayout } from './scan-layout.js';

const SPACE = 32;
const QUOTE = 34;
const PLUS = 43;
const MINUS = 45;
const ZERO = 48;
const NINE = 57;
const CARRIAGE_RETURN = 13;
/** Mantissas up to 15 digits and powers up to 22 divide to the nearest double, as `Number` would give. */
const MAX_EXACT_DIGITS = 15;
const POWERS = Float64Array.from({ length: MAX_EXACT_DIGITS + 1 }, (_, power) => Number(`1e${power}`));
const MAX_LINE_BYTES = 1 << 20;
const MAX_QUOTED_BYTES = 1 << 12;

/**
 * Reads rows of numbers straight from bytes, without making a string of each cell. Numbers come out as
 * `Number` would read them, to the last bit; whatever is not a plain number goes the slow way through
 * `parseCell`. Quoted cells may hold delimiters and line breaks (RFC 4180).
 */
export class RowScanner {
  readonly counts: ScanCounts = { rows: 0, wordRows: 0, shortRows: 0, longRows: 0 };
  readonly #layout: ScanLayout;
  readonly #onRow: (values: Float64Array) => void;
  readonly #values: Float64Array;
  readonly #marks: Uint8Array;
  readonly #delimiter: number;
  #bytes: Uint8Array = new Uint8Array(0);
  #position = 0;
  #mantissa = 0;
  #linesToSkip: number;
  #wordCells = 0;
  /** Set for a row whose quotation mark never closes. */
  #quotesAreData = false;
  #rest: Uint8Array = new Uint8Array(0);

  constructor(layout: ScanLayout, onRow: (values: Float64Array) => void) {
    this.#layout = layout;
    this.#onRow = onRow;
    this.#values = new Float64Array(layout.placeCount);
    // A decimal comma in a comma-separated file stands only in quoted cells, which go the slow way.
    this.#marks = Uint8Array.from(layout.decimalMarks, (mark) =>
      mark === layout.delimiter ? 0 : mark.charCodeAt(0),
    );
    this.#delimiter = layout.delimiter.charCodeAt(0);
    this.#linesToSkip = layout.skipLineCount;
  }

  /** Takes the next bytes of the file (UTF-8 or one-byte text). @throws LogError for a line without end */
  push(chunk: Uint8Array): void {
    let start = 0;
    // Only the row that the last chunk broke off is copied together; the others are read where they are.
    while (this.#rest.length > 0 && start < chunk.length) {
      const lineEnd = chunk.indexOf(this.#layout.lineEnd, start);
      const end = lineEnd === -1 ? chunk.length : lineEnd + 1;
      const row = joinBytes(this.#rest, chunk.subarray(start, end));
      this.#rest = new Uint8Array(0);
      this.#scan(row);
      start = end;
    }
    if (start < chunk.length) this.#scan(chunk.subarray(start));
  }

  #scan(bytes: Uint8Array): void {
    this.#bytes = bytes;
    this.#position = 0;
    const { lineEnd } = this.#layout;
    for (;;) {
      const start = this.#position;
      const end = bytes.indexOf(lineEnd, start);
      if (end === -1) return this.#keepRest(start);
      if (this.#linesToSkip > 0) {
        this.#linesToSkip -= 1;
        this.#position = end + 1;
      } else if (!this.#scanRow(start, end)) return this.#keepRest(start);
    }
  }

  /** Reads what stands after the last line break. */
  finish(): void {
    if (this.#rest.length === 0) return;
    this.push(Uint8Array.of(this.#layout.lineEnd));
    while (this.#rest.length > 0) {
      const rows = this.#rest;
      this.#rest = new Uint8Array(0);
      this.#quotesAreData = true;
      this.#scan(rows);
    }
  }

  #keepRest(start: number): void {
    // A copy: `slice` of a Node Buffer would be a view of bytes that the caller may use again.
    this.#rest = Uint8Array.from(this.#bytes.subarray(start));
    if (this.#rest.length <= MAX_LINE_BYTES) return;
    throw endlessLine();
  }

  /** False where a quoted cell runs past the bytes at hand. */
  #scanRow(start: number, lineEnd: number): boolean {
    const end = lineEnd > start && this.#bytes[lineEnd - 1] === CARRIAGE_RETURN ? lineEnd - 1 : lineEnd;
    const { places } = this.#layout;
    const columnCount = places.length;
    this.#wordCells = 0;
    this.#position = start;
    this.#values.fill(NaN);
    let column = 0;
    while (column < columnCount && this.#position <= end) {
      if (this.#bytes[this.#position] === QUOTE && !this.#quotesAreData)
        return this.#scanQuotedRow(start, lineEnd);
      const place = places[column] as number;
      if (place < 0) this.#passCell(end);
      else this.#values[place] = this.#readCell(end, column);
      column += 1;
    }
    const isLong = this.#position <= end && !isBlank(this.#bytes, this.#position, end, this.#delimiter);
    this.#position = lineEnd + 1;
    this.#quotesAreData = false;
    if (end > start) this.#finishRow(column, isLong);
    return true;
  }

  #finishRow(column: number, isLong: boolean): void {
    if (isLong) this.counts.longRows += 1;
    else if (column < this.#layout.places.length) this.counts.shortRows += 1;
    if (this.#hasNumber()) {
      this.counts.rows += 1;
      this.#onRow(this.#values);
    } else if (this.#wordCells > 0) this.counts.wordRows += 1;
  }

  #hasNumber(): boolean {
    const values = this.#values;
    for (let place = 0; place < values.length; place += 1) {
      if (values[place] === values[place]) return true;
    }
    return false;
  }

  #passCell(end: number): void {
    const bytes = this.#bytes;
    const delimiter = this.#delimiter;
    let at = this.#position;
    while (at < end && bytes[at] !== delimiter) at += 1;
    this.#position = at + 1;
  }

  #readCell(end: number, column: number): number {
    const start = this.#position;
    let at = start;
    while (this.#bytes[at] === SPACE) at += 1;
    const sign = this.#bytes[at];
    if (sign === MINUS || sign === PLUS) at += 1;
    const size = this.#readSize(at, end, column);
    // The bytes are scanned to where the plain number ends; anything but a delimiter there makes the cell odd.
    if (size !== size) return this.#readOddCell(start, end, column);
    return sign === MINUS ? -size : size;
  }

  /** An unsigned plain number that fills its cell; NaN where it does not. */
  #readSize(start: number, end: number, column: number): number {
    this.#mantissa = 0;
    const afterWhole = this.#readDigits(start);
    const hasMark = this.#bytes[afterWhole] === this.#marks[column];
    const next = hasMark ? this.#readDigits(afterWhole + 1) : afterWhole;
    const scale = hasMark ? next - afterWhole - 1 : 0;
    const digitCount = afterWhole - start + scale;
    if (digitCount === 0 || digitCount > MAX_EXACT_DIGITS || next > end) return NaN;
    if (next < end && this.#bytes[next] !== this.#delimiter) return NaN;
    this.#position = next + 1;
    return this.#mantissa / (POWERS[scale] as number);
  }

  #readDigits(start: number): number {
    const bytes = this.#bytes;
    let mantissa = this.#mantissa;
    let at = start;
    let byte = bytes[at] as number;
    while (byte >= ZERO && byte <= NINE) {
      mantissa = mantissa * 10 + (byte - ZERO);
      at += 1;
      byte = bytes[at] as number;
    }
    this.#mantissa = mantissa;
    return at;
  }

  #readOddCell(start: number, end: number, column: number): number {
    this.#position = start;
    this.#passCell(end);
    const cellEnd = Math.min(this.#position - 1, end);
    if (cellEnd <= start) return NaN;
    return this.#readText(latinText(this.#bytes, start, cellEnd), column);
  }

  #readText(text: string, column: number): number {
    const cell = parseCell(text, this.#layout.decimalMarks[column] ?? '.');
    if (cell.kind === 'words') this.#wordCells += 1;
    return cell.value;
  }

  /** The slow way through a row that holds a quoted cell. */
  #scanQuotedRow(start: number, firstLineEnd: number): boolean {
    const { places } = this.#layout;
    let at = start;
    let column = 0;
    let isLong = false;
    this.#wordCells = 0;
    this.#values.fill(NaN);
    for (;;) {
      const cell = readQuotedCell(this.#bytes, at, this.#delimiter, this.#layout.lineEnd);
      if (cell === null) return this.#waitOrGiveUpQuote(start, firstLineEnd);
      const place = places[column];
      if (place === undefined) isLong ||= cell.text.trim() !== '';
      else if (place >= 0) this.#values[place] = this.#readText(cell.text, column);
      column += 1;
      at = cell.next;
      if (cell.endsRow) break;
    }
    this.#position = at;
    this.#finishRow(Math.min(column, places.length), isLong);
    return true;
  }

  /** A quoted cell longer than a logger writes is a stray quotation mark: its row is read without it. */
  #waitOrGiveUpQuote(start: number, firstLineEnd: number): boolean {
    if (this.#bytes.length - start < MAX_QUOTED_BYTES) return false;
    this.#quotesAreData = true;
    return this.#scanRow(start, firstLineEnd);
  }
}
