import { assembleSamples } from '../channels/assemble-samples.js';
import type { ChannelQuantity } from '../channel-quantities.js';
import { noPressure } from '../channels/no-pressure.js';
import { refuseUnlikeTimes } from '../channels/refuse-unlike-times.js';
import { recogniseColumns, type ColumnClaim } from '../channels/recognise-columns.js';
import { LogError } from '../log-error.js';
import type { LogOptions } from '../log-options.js';
import type { LogSamples } from '../log-samples.js';
import { byteText, type ByteText } from './byte-text.js';
import { cellUnits } from './cell-units.js';
import { detectLayout, type TableLayout } from './detect-layout.js';
import { HEAD_BYTES } from './head-bytes.js';
import { joinBytes } from './join-bytes.js';
import { NumberColumns } from './number-columns.js';
import { RowScanner } from './row-scanner.js';

/** Takes a log piece by piece, of any size, so that it need never be in memory as a whole. */
export interface LogReader {
  /** Next bytes of the file, or next piece of its text. @throws LogError for what cannot be a log */
  push(chunk: Uint8Array | string): void;
  /** Everything has been pushed. @throws LogError where there is nothing to analyse */
  finish(): LogSamples;
}

/**
 * A reader for one log file in delimited text: finds encoding, delimiter, decimal marks, header and unit
 * rows, recognises the columns, and keeps only those that it understands. Memory grows with the samples
 * of those columns (4 bytes each, 8 for time), not with the file.
 *
 * @param options what is known beside the file
 * @throws LogError from `push` and `finish`
 * Source: RFC 4180 for the format; what loggers make of it is common practice, no source.
 */
export function createLogReader(options: LogOptions = {}): LogReader {
  return new DelimitedLogReader(options);
}

interface OpenTable {
  readonly layout: TableLayout;
  readonly claims: readonly ColumnClaim[];
  readonly places: Int32Array;
  readonly columns: NumberColumns;
  readonly scanner: RowScanner;
}

class DelimitedLogReader implements LogReader {
  readonly #options: LogOptions;
  #text: ByteText | null = null;
  #head: Uint8Array = new Uint8Array(0);
  #table: OpenTable | null = null;
  #isFinished = false;

  constructor(options: LogOptions) {
    this.#options = options;
  }

  push(chunk: Uint8Array | string): void {
    this.#refuseFinished();
    const bytes = typeof chunk === 'string' ? new TextEncoder().encode(chunk) : chunk;
    if (this.#table !== null) {
      this.#table.scanner.push(this.#text?.push(bytes) ?? bytes);
      return;
    }
    this.#head = joinBytes(this.#head, Uint8Array.from(bytes));
    if (this.#head.length >= HEAD_BYTES) this.#open();
  }

  finish(): LogSamples {
    this.#refuseFinished();
    this.#isFinished = true;
    const table = this.#table ?? this.#open();
    table.scanner.push(this.#text?.finish() ?? new Uint8Array(0));
    table.scanner.finish();
    const encoding = this.#text?.encoding ?? 'utf-8';
    return assembleSamples({ ...table, counts: table.scanner.counts, encoding }, this.#options);
  }

  #open(): OpenTable {
    const bytes = this.#head;
    if (bytes.length === 0)
      throw new LogError('empty-file', 'the file is empty', 'choose the file with the log in it');
    this.#text = byteText(bytes);
    const whole = this.#text.push(bytes);
    this.#head = new Uint8Array(0);
    const text = this.#text.decodeHead(whole.subarray(0, HEAD_BYTES));
    this.#table = openTable(text, this.#options);
    this.#table.scanner.push(whole);
    return this.#table;
  }

  #refuseFinished(): void {
    if (!this.#isFinished) return;
    throw new LogError(
      'reader-finished',
      'this log has been read to its end',
      'make a new reader for another log',
    );
  }
}

function openTable(text: string, options: LogOptions): OpenTable {
  const recipe = options.recipe ?? null;
  const layout = detectLayout(text, {
    delimiter: recipe?.delimiter ?? null,
    decimalMark: recipe?.decimalMark ?? null,
  });
  const heads = { headers: layout.headers, unitTexts: layout.unitTexts, cellUnitTexts: cellUnits(layout) };
  const claims = recogniseColumns(heads, recipe);
  refuseUnlikeTimes(layout, claims);
  if (!claims.some(({ quantity }) => PRESSURES.has(quantity)))
    throw noPressure(layout.hasHeader ? layout.headers : []);
  const places = placesOf(claims, options.keptColumns);
  const placeCount = places.reduce((most, place) => Math.max(most, place), 0) + 1;
  const columns = new NumberColumns(
    placeCount,
    expectedRows(text, layout, placeCount, options.byteCount ?? null),
  );
  const scanner = new RowScanner(
    {
      delimiter: layout.delimiter,
      decimalMarks: layout.decimalMarks,
      places,
      placeCount,
      skipLineCount: layout.headLineCount,
      lineEnd: text.includes('\n') ? 10 : 13,
    },
    (values) => columns.push(values),
  );
  return { layout, claims, places, columns, scanner };
}

const USUAL_ROWS = 1 << 15;
/** Later rows may be shorter than the first ones. */
const SPARE_SHARE = 1.1;
/** A cell takes at least two bytes of the file, a digit and a delimiter. */
const LEAST_CELL_BYTES = 2;

/** How many rows the file will have, from the length of its first rows of samples. */
function expectedRows(
  head: string,
  layout: TableLayout,
  columnCount: number,
  byteCount: number | null,
): number {
  if (byteCount === null || !(byteCount >= 0)) return USUAL_ROWS;
  const lines = head.split(/\r\n|\n|\r/).slice(layout.headLineCount, -1);
  const lineBytes = lines.reduce((sum, line) => sum + line.length + 1, 0) / lines.length;
  const mostRows = byteCount / LEAST_CELL_BYTES / columnCount;
  return Math.min(mostRows, SPARE_SHARE * (byteCount / lineBytes) || USUAL_ROWS) + 1;
}

const PRESSURES = new Set(['boost-pressure', 'manifold-absolute-pressure']);
/** What boost is settled from. */
const SETTLES_BOOST = new Set([...PRESSURES, 'barometric-pressure']);

/** Quantities that analysis or traces look at; the others are recognised and shown, but their samples are not kept. */
const KEPT = new Set<ChannelQuantity>([
  'boost-pressure',
  'manifold-absolute-pressure',
  'barometric-pressure',
  'engine-speed',
  'vehicle-speed',
  'undriven-wheel-speed',
  'throttle',
  'pedal',
  'gear',
  'intake-temperature',
  'lambda',
  'knock-retard',
  'knock-count',
  'solenoid-duty',
  'acceleration',
  'altitude',
]);

/** Time comes first because it is kept in double precision; columns that nobody looks at are passed over. */
function placesOf(claims: readonly ColumnClaim[], kept?: ReadonlySet<number>): Int32Array {
  let next = 1;
  return Int32Array.from(claims, (claim) => {
    if (claim.quantity === 'time') return 0;
    const isKept = kept === undefined ? KEPT.has(claim.quantity) : kept.has(claim.column);
    if (!isKept && !SETTLES_BOOST.has(claim.quantity)) return -1;
    next += 1;
    return next - 1;
  });
}
