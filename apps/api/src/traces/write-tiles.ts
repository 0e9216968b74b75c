import type { TraceLevel } from '@pullbook/contracts';
import { buildMinMaxLevels, TILE_BINS } from '@pullbook/tuning-math';
import { closeSync, fsyncSync, openSync, writeSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import type { TraceFacts } from './trace-file.js';

/** Singles of a logger repeat much: the fastest setting makes them about as small as the slowest. */
const COMPRESSION = { level: 1 };

/** Writes a trace file slot by slot, so that only one channel need be in memory. */
export class TileWriter {
  readonly #file: number;
  readonly #places: number[] = [];
  #bytes = 0;

  /** @param path of a file that is not there yet */
  constructor(path: string) {
    this.#file = openSync(path, 'wx');
  }

  /** The times of the rows: for each level when its bins start, and when the bin after a tile does. */
  addTimes(timeS: Float64Array, levels: readonly TraceLevel[]): void {
    for (const { rowsPerBin, binCount } of levels) {
      for (let first = 0; first < binCount; first += TILE_BINS) {
        const count = Math.min(TILE_BINS, binCount - first);
        const starts = Float64Array.from({ length: count + 1 }, (_, bin) =>
          startOf(timeS, (first + bin) * rowsPerBin),
        );
        this.#write(starts);
      }
    }
  }

  /** The samples of one channel and the extremes above them. */
  addChannel(values: Float32Array): void {
    for (let first = 0; first < values.length; first += TILE_BINS) {
      this.#write(values.subarray(first, first + TILE_BINS));
    }
    for (const { lows, highs } of buildMinMaxLevels(values)) {
      for (let first = 0; first < lows.length; first += TILE_BINS) {
        const count = Math.min(TILE_BINS, lows.length - first);
        const both = new Float32Array(2 * count);
        both.set(lows.subarray(first, first + count));
        both.set(highs.subarray(first, first + count), count);
        this.#write(both);
      }
    }
  }

  /** Writes what is needed to find the tiles; when it returns, all is on the disk. */
  finish(facts: TraceFacts): void {
    const placesAt = this.#bytes;
    this.#append(bytesOf(Float64Array.from([...this.#places, placesAt])));
    const factsAt = this.#bytes;
    this.#append(Buffer.from(JSON.stringify(facts)));
    this.#append(bytesOf(Float64Array.of(placesAt, factsAt)));
    fsyncSync(this.#file);
    closeSync(this.#file);
  }

  #write(values: Float32Array | Float64Array): void {
    this.#places.push(this.#bytes);
    this.#append(gzipSync(bytesOf(values), COMPRESSION));
  }

  #append(bytes: Buffer): void {
    writeSync(this.#file, bytes);
    this.#bytes += bytes.byteLength;
  }
}

/** The row after the last one would come as late as it came after the one before. */
function startOf(timeS: Float64Array, row: number): number {
  const last = timeS.length - 1;
  if (row <= last) return timeS[row] as number;
  const end = timeS[last] as number;
  return end + Math.max(0, end - (timeS[last - 1] ?? end));
}

function bytesOf(values: Float32Array | Float64Array): Buffer {
  return Buffer.from(values.buffer, values.byteOffset, values.byteLength);
}
