import { unitOfText } from '../channels/unit-words.js';
import { LogError } from '../log-error.js';
import type { LogLayout } from '../log-samples.js';
import { decimalMarksOf } from './decimal-marks.js';
import { parseCell } from './parse-cell.js';
import { splitRecords, type TextRecord } from './split-records.js';

export type Delimiter = LogLayout['delimiter'];

/** Where the table stands in the text, and what its head says. */
export interface TableLayout {
  readonly delimiter: Delimiter;
  readonly decimalMarks: readonly ('.' | ',')[];
  readonly headers: readonly string[];
  readonly unitTexts: readonly string[];
  readonly hasHeader: boolean;
  readonly hasUnitRow: boolean;
  readonly preambleLineCount: number;
  /** Physical lines before the first row of samples. */
  readonly headLineCount: number;
  /** Some rows as text, for what only their spelling tells. */
  readonly sampleRows: readonly (readonly string[])[];
}

/** What the caller already knows. */
export interface LayoutHints {
  readonly delimiter?: Delimiter | null;
  readonly decimalMark?: '.' | ',' | null;
}

const DELIMITERS: readonly Delimiter[] = [',', ';', '\t', '|', ' '];
const MAX_RECORDS = 400;
const MAX_COLUMNS = 1000;
const MAX_HEAD_ROWS = 3;
const MAX_LOOK_BACK = 12;
const LEAST_NUMBER_SHARE = 0.5;

/**
 * Layout of a delimited log from its first lines: the delimiter under which most rows of numbers share one
 * width, the header and unit rows that stand above the first of them, and each column's decimal mark.
 *
 * @param text first lines of the log, decoded
 * @throws LogError `no-table` where no delimiter makes a table, `too-many-columns`
 * Source: common practice, no source. Cost: O(length of text).
 */
export function detectLayout(text: string, hints: LayoutHints = {}): TableLayout {
  const present = DELIMITERS.filter((delimiter) => text.includes(delimiter));
  const candidates = hints.delimiter
    ? [hints.delimiter]
    : present.length === 0
      ? DELIMITERS.slice(0, 1)
      : present;
  const table = candidates.map((delimiter) => findTable(text, delimiter)).reduce(better);
  if (table.width < 2 && table.rowCount === 0) throw noTable(text);
  if (table.width > MAX_COLUMNS) {
    throw new LogError(
      'too-many-columns',
      `the log has ${table.width} columns`,
      `at most ${MAX_COLUMNS} can be read`,
    );
  }
  return describe(table, hints);
}

interface Table {
  readonly delimiter: Delimiter;
  readonly records: readonly TextRecord[];
  /** Cells of most rows of numbers. */
  readonly width: number;
  readonly rowCount: number;
  readonly firstRow: number;
}

function better(a: Table, b: Table): Table {
  return b.rowCount * (b.width - 1) > a.rowCount * (a.width - 1) * (b.delimiter === ' ' ? 1.5 : 1) ? b : a;
}

function findTable(text: string, delimiter: Delimiter): Table {
  const records = splitRecords(text, delimiter, MAX_RECORDS);
  const rowWidths = new Map<number, number>();
  for (const record of records) {
    if (!isRowOfNumbers(record.cells)) continue;
    rowWidths.set(record.cells.length, (rowWidths.get(record.cells.length) ?? 0) + 1);
  }
  let width = 0;
  let rowCount = 0;
  for (const [cells, rows] of rowWidths) {
    if (rows * (cells - 0.9) > rowCount * (width - 0.9)) [width, rowCount] = [cells, rows];
  }
  const firstRow = records.findIndex(
    (record) => isRowOfNumbers(record.cells) && record.cells.length >= width - 1,
  );
  return { delimiter, records, width, rowCount, firstRow };
}

function isRowOfNumbers(cells: readonly string[]): boolean {
  const filled = cells.filter((cell) => cell !== '');
  if (filled.length === 0) return false;
  const numbers = filled.filter((cell) => isNumberLike(cell)).length;
  return numbers > 0 && numbers >= LEAST_NUMBER_SHARE * filled.length;
}

/** What most cells of a log are, told without taking them apart. */
const PLAIN_NUMBER = /^[+-]?\d+(?:[.,]\d+)?$/;

function isNumberLike(cell: string): boolean {
  if (PLAIN_NUMBER.test(cell)) return true;
  return [parseCell(cell, '.'), parseCell(cell, ',')].some(
    ({ kind }) => kind === 'number' || kind === 'clock',
  );
}

function noTable(text: string): LogError {
  if (text.trim() === '')
    return new LogError('empty-file', 'the file is empty', 'choose the file with the log in it');
  return new LogError(
    'no-rows',
    'the file has no rows of numbers',
    'check that the logger was recording, and that this is the log and not a settings file',
  );
}

function describe(table: Table, hints: LayoutHints): TableLayout {
  const first = table.records[table.firstRow];
  const head = headRows(table);
  const unitIndex = head.findLastIndex((record) => isUnitRow(record.cells));
  const header = head.findLast((record, index) => index !== unitIndex && !isSparse(record, table.width));
  refuseUnnamed(header, table);
  const sampleRows = table.records.slice(Math.max(table.firstRow, 0)).map((record) => record.cells);
  const columns = Array.from({ length: table.width }, (_, column) =>
    sampleRows.map((cells) => cells[column] ?? ''),
  );
  const preambleEnd = header ?? head[unitIndex] ?? first;
  return {
    delimiter: table.delimiter,
    decimalMarks: hints.decimalMark ? columns.map(() => hints.decimalMark ?? '.') : decimalMarksOf(columns),
    headers: columns.map((_, column) => header?.cells[column] || `column ${column + 1}`),
    unitTexts: columns.map((_, column) => head[unitIndex]?.cells[column] ?? ''),
    hasHeader: header !== undefined,
    hasUnitRow: unitIndex !== -1,
    preambleLineCount: preambleEnd?.line ?? 0,
    headLineCount: first?.line ?? 0,
    sampleRows,
  };
}

/** One surplus cell may be a trailing delimiter; more cannot be told from values that a decimal comma cut in two. */
function refuseUnnamed(header: TextRecord | undefined, table: Table): void {
  if (header === undefined || header.cells.length >= table.width - 1) return;
  throw new LogError(
    'no-table',
    `the rows have ${table.width} values but only ${header.cells.length} headers, so values cannot be told apart`,
    'is a decimal comma used in a comma-separated file? Say delimiter and decimal mark in the channel recipe, or export with semicolons',
  );
}

function headRows(table: Table): TextRecord[] {
  const rows: TextRecord[] = [];
  for (
    let index = table.firstRow - 1;
    index >= Math.max(table.firstRow - MAX_LOOK_BACK, 0) && rows.length < MAX_HEAD_ROWS;
    index -= 1
  ) {
    const record = table.records[index];
    if (record === undefined) break;
    // A short line, a blank one, or a broken row of samples may stand between header and samples.
    if (record.cells.length < table.width / 2 || isRowOfNumbers(record.cells)) continue;
    if (record.cells.length > table.width + 2 || record.cells.every((cell) => cell === '')) continue;
    rows.unshift(record);
  }
  return rows;
}

function isUnitRow(cells: readonly string[]): boolean {
  const filled = cells.filter((cell) => cell !== '');
  const units = filled.filter((cell) => unitOfText(cell) !== null || /^[[(].*[\])]$/.test(cell)).length;
  return filled.length > 0 && units >= 0.6 * filled.length;
}

function isSparse(record: TextRecord, width: number): boolean {
  return record.cells.filter((cell) => cell !== '').length < width / 2;
}
