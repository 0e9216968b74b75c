import type { TraceChannel } from '@pullbook/contracts';
import {
  channelUnit,
  TILE_BINS,
  writeSingle,
  type ChannelBaseUnit,
  type ChannelUnit,
} from '@pullbook/tuning-math';
import { promisify } from 'node:util';
import { gunzip } from 'node:zlib';
import { doublesOf, type OpenTraceFile } from './open-trace-file.js';

/** Which rows and channels, in whose units. */
export interface Cut {
  readonly fromRow: number;
  /** The row after the last. */
  readonly endRow: number;
  readonly channels: readonly number[];
  readonly units: Parameters<typeof channelUnit>[1];
}

const unzip = promisify(gunzip);

/**
 * The samples of a stretch of a log as CSV (RFC 4180), piece by piece: a header with units, then one line for each
 * row; a cell stays empty where a channel has no sample. In the unit of the store every number reads back as the very
 * same single; in another unit it has seven digits.
 */
export async function* cutCsv(file: OpenTraceFile, cut: Cut): AsyncGenerator<string> {
  const chosen = cut.channels.map((number) => columnOf(file.facts.channels[number], number, cut));
  yield line(['Time (s)', ...chosen.map(({ head }) => head)]);
  const lastTile = Math.floor((cut.endRow - 1) / TILE_BINS);
  for (let tile = Math.floor(cut.fromRow / TILE_BINS); tile <= lastTile; tile += 1) {
    const times = doublesOf(await tileOf(file, 0, tile));
    const columns = await Promise.all(
      chosen.map(async ({ number }) => singlesOf(await tileOf(file, number + 1, tile))),
    );
    const first = tile * TILE_BINS;
    const end = Math.min(cut.endRow - first, times.length - 1);
    const lines: string[] = [];
    for (let row = Math.max(0, cut.fromRow - first); row < end; row += 1) {
      const cells = chosen.map(({ write }, column) => write(columns[column]?.[row] ?? NaN));
      lines.push(line([String(times[row]), ...cells]));
    }
    yield lines.join('');
  }
}

/** Rows from one moment to another, both included. */
export async function rowsBetween(
  file: OpenTraceFile,
  fromS: number,
  toS: number,
): Promise<[number, number]> {
  const fromRow = await firstRow(file, (timeS) => timeS >= fromS);
  return [fromRow, await firstRow(file, (timeS) => timeS > toS)];
}

/** First row that is late enough: by its bin at the coarsest level, then by itself. */
async function firstRow(file: OpenTraceFile, isLate: (timeS: number) => boolean): Promise<number> {
  const { levels, rowCount } = file.facts;
  const top = levels.length - 1;
  const rowsPerBin = levels[top]?.rowsPerBin ?? 1;
  const starts = doublesOf(await tileOf(file, 0, 0, top));
  const lateBin = starts.findIndex((timeS, bin) => bin * rowsPerBin >= rowCount || isLate(timeS));
  // The bin before the first late one may hold late rows.
  let row = Math.max(0, (lateBin - 1) * rowsPerBin);
  for (let tile = Math.floor(row / TILE_BINS); tile * TILE_BINS < rowCount; tile += 1) {
    const times = doublesOf(await tileOf(file, 0, tile));
    for (; row < Math.min(rowCount, (tile + 1) * TILE_BINS); row += 1) {
      if (isLate(times[row - tile * TILE_BINS] as number)) return row;
    }
  }
  return rowCount;
}

interface CutColumn {
  readonly number: number;
  readonly head: string;
  readonly write: (value: number) => string;
}

function columnOf(channel: TraceChannel | undefined, number: number, { units }: Cut): CutColumn {
  if (channel === undefined) throw new RangeError(`there is no channel ${number}`);
  const unit = channelUnit(channel.unit as ChannelBaseUnit, units);
  const head = unit.word === '' ? channel.name : `${channel.name} (${unit.word})`;
  return { number, head, write: (value) => writeIn(unit, value) };
}

const SHOWN_DIGITS = 7;

function writeIn({ scale, offset }: ChannelUnit, value: number): string {
  if ((scale === 1 && offset === 0) || Number.isNaN(value)) return writeSingle(value);
  return String(Number((value * scale + offset).toPrecision(SHOWN_DIGITS)));
}

function line(cells: readonly string[]): string {
  return `${cells.map(quoted).join(',')}\r\n`;
}

function quoted(cell: string): string {
  return /[",\r\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
}

async function tileOf(file: OpenTraceFile, slot: number, tile: number, level = 0): Promise<Buffer> {
  const bytes = await file.readTile(slot, level, tile);
  if (bytes === null) throw new Error(`a trace file lacks tile ${tile} of slot ${slot}`);
  return unzip(bytes);
}

function singlesOf(bytes: Buffer): Float32Array {
  return new Float32Array(Uint8Array.from(bytes).buffer);
}
