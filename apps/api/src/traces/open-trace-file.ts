import { TILE_BINS } from '@pullbook/tuning-math';
import { open, type FileHandle } from 'node:fs/promises';
import { TAIL_BYTES, tilesOfSlot, type TraceFacts } from './trace-file.js';

/** A trace file that can be read from. */
export interface OpenTraceFile {
  readonly facts: TraceFacts;
  /**
   * One tile as it is kept, compressed by gzip; null where there is no such tile.
   * @param slot 0 for the times, n + 1 for channel n
   */
  readTile(slot: number, level: number, tile: number): Promise<Buffer | null>;
}

const MOST_OPEN = 40;
const opened = new Map<string, Promise<OpenTraceFile>>();

/** Opens a trace file; what is needed to find its tiles stays in memory for the last few. @throws where there is none */
export function openTraceFile(path: string): Promise<OpenTraceFile> {
  const known = opened.get(path);
  if (known !== undefined) return known;
  const file = withFile(path, readFacts).then((found) => traceFile(path, found));
  opened.set(path, file);
  file.catch(() => opened.delete(path));
  const [oldest] = opened.keys();
  if (opened.size > MOST_OPEN && oldest !== undefined) opened.delete(oldest);
  return file;
}

interface Found {
  readonly facts: TraceFacts;
  readonly places: Float64Array;
}

function traceFile(path: string, { facts, places }: Found): OpenTraceFile {
  const slotTiles = tilesOfSlot(facts.levels, TILE_BINS);
  return {
    facts,
    async readTile(slot, level, tile) {
      const shape = facts.levels[level];
      if (shape === undefined || slot > facts.channels.length || tile * TILE_BINS >= shape.binCount)
        return null;
      const number = slot * slotTiles + tilesOfSlot(facts.levels.slice(0, level), TILE_BINS) + tile;
      const [start, end] = [places[number], places[number + 1]];
      if (start === undefined || end === undefined) return null;
      return withFile(path, (file) => readPiece(file, start, end));
    },
  };
}

async function withFile<T>(path: string, read: (file: FileHandle) => Promise<T>): Promise<T> {
  const file = await open(path, 'r');
  try {
    return await read(file);
  } finally {
    await file.close();
  }
}

async function readPiece(file: FileHandle, start: number, end: number): Promise<Buffer> {
  const bytes = Buffer.alloc(end - start);
  const { bytesRead } = await file.read(bytes, 0, bytes.byteLength, start);
  if (bytesRead !== bytes.byteLength) throw new Error('a trace file is shorter than it says');
  return bytes;
}

async function readFacts(file: FileHandle): Promise<Found> {
  const { size } = await file.stat();
  const tail = await readPiece(file, size - TAIL_BYTES, size);
  const [placesAt, factsAt] = [tail.readDoubleLE(0), tail.readDoubleLE(8)];
  const places = await readPiece(file, placesAt, factsAt);
  const facts = JSON.parse(
    (await readPiece(file, factsAt, size - TAIL_BYTES)).toString('utf8'),
  ) as TraceFacts;
  return { facts, places: doublesOf(places) };
}

/** The bytes of doubles as doubles. */
export function doublesOf(bytes: Buffer): Float64Array {
  return new Float64Array(Uint8Array.from(bytes).buffer);
}
