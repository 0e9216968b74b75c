import type { TraceIndex } from '@pullbook/contracts';
import type { Tile, TileStore } from './tile-store';

/** Bins that follow each other, of one channel at one level. */
export interface Piece {
  /** When bins begin; one more than there are bins, so that the last one has an end. */
  readonly times: Float64Array;
  readonly lows: Float32Array;
  readonly highs: Float32Array;
  /** Bins of the piece: from the first up to but not including the end. */
  readonly first: number;
  readonly end: number;
  readonly rowsPerBin: number;
}

/** Rows of a log, from the first up to but not including the end. */
export interface RowSpan {
  readonly first: number;
  readonly end: number;
}

/** What a channel reads at a moment: one sample, or all that its bin spans while the samples have not come. */
export interface Reading {
  readonly low: number;
  readonly high: number;
  readonly isExact: boolean;
}

type Values = Extract<Tile, { lows: unknown }>;

/** Reads the log's samples at any fineness out of the tiles that are here, and asks for those that are not. */
export class TraceReader {
  readonly #index: TraceIndex;
  readonly #store: TileStore;
  readonly #top: number;

  constructor(index: TraceIndex, store: TileStore) {
    this.#index = index;
    this.#store = store;
    this.#top = index.levels.length - 1;
  }

  /** Rows that hold all samples of a stretch, and a few before and behind; null while nothing is known. */
  rowsOf(fromS: number, toS: number): RowSpan | null {
    const starts = this.#times(this.#top, 0, true);
    const level = this.#index.levels[this.#top];
    if (starts === null || level === undefined) return null;
    const bins = { first: lastAtOrBefore(starts, fromS) - 1, end: lastAtOrBefore(starts, toS) + 2 };
    const { rowCount } = this.#index;
    return {
      first: Math.max(0, bins.first) * level.rowsPerBin,
      end: Math.min(rowCount, bins.end * level.rowsPerBin),
    };
  }

  /** Asks for the coarsest tile of a channel, before it is known where its rows lie. */
  wantCoarsest(channel: number): void {
    this.#tile(channel + 1, this.#top, 0, true);
  }

  /**
   * Hands over the bins of a stretch of rows at a level, piece by piece in order. Where a tile is not here it is
   * asked for, and coarser bins stand in.
   */
  visit(channel: number, rows: RowSpan, level: number, take: (piece: Piece) => void): void {
    this.#visit({ channel, level, isWanted: true }, rows, take);
  }

  /** What a channel reads in the row at or before a moment. `isWanted`: ask for the sample where it is not here. */
  readAt(channel: number, timeS: number, isWanted: boolean): Reading | null {
    for (let level = 0; level <= this.#top; level += 1) {
      const reading = this.#readAt(channel, timeS, level, isWanted && level === 0);
      if (reading !== null) return reading;
    }
    return null;
  }

  /** Time of the row nearest to a moment; the moment itself while the row's time is not here. */
  rowTimeNear(timeS: number, isWanted: boolean): number {
    const near = this.#rowNear(timeS, isWanted);
    return near?.timeS ?? timeS;
  }

  /** Time of the row so many rows on; null while it is not here. */
  rowTimeFrom(timeS: number, byRows: number): number | null {
    const near = this.#rowNear(timeS, true);
    if (near === null) return null;
    const row = Math.min(this.#index.rowCount - 1, Math.max(0, near.row + byRows));
    const tile = Math.floor(row / this.#index.tileBins);
    return this.#times(0, tile, true)?.[row - tile * this.#index.tileBins] ?? null;
  }

  #rowNear(timeS: number, isWanted: boolean): { row: number; timeS: number } | null {
    const found = this.#findBin(timeS, { level: 0, isWanted, channel: null });
    if (found === null) return null;
    const { times, bin, tile } = found;
    const [here, next] = [times[bin] ?? timeS, times[bin + 1] ?? Infinity];
    const row = tile * this.#index.tileBins + bin;
    const isNextNearer = next - timeS < timeS - here && row + 1 < this.#index.rowCount;
    return isNextNearer ? { row: row + 1, timeS: next } : { row, timeS: here };
  }

  #readAt(channel: number, timeS: number, level: number, isWanted: boolean): Reading | null {
    const found = this.#findBin(timeS, { level, isWanted, channel });
    if (found === null) return null;
    const values = this.#values(channel, level, found.tile, isWanted);
    if (values === null) return null;
    const bin = level === 0 ? lastSample(values.lows, found.bin) : found.bin;
    const gapS = (found.times[found.bin] ?? 0) - (found.times[bin] ?? 0);
    if (gapS > this.#longestHeldS(channel)) return { low: NaN, high: NaN, isExact: true };
    return { low: values.lows[bin] ?? NaN, high: values.highs[bin] ?? NaN, isExact: level === 0 };
  }

  /** A channel slower than the rows shows its last sample for so long. */
  #longestHeldS(channel: number): number {
    return LONGEST_HELD * (this.#index.channels[channel]?.intervalS ?? 0);
  }

  /** The bin at or before a moment at some level. */
  #findBin(
    timeS: number,
    { level, isWanted, channel }: { level: number; isWanted: boolean; channel: number | null },
  ): { times: Float64Array; bin: number; tile: number } | null {
    const rows = this.rowsOf(timeS, timeS);
    const shape = this.#index.levels[level];
    if (rows === null || shape === undefined) return null;
    const tileRows = shape.rowsPerBin * this.#index.tileBins;
    const lastTile = Math.floor(Math.max(0, rows.end - 1) / tileRows);
    for (let tile = Math.floor(rows.first / tileRows); tile <= lastTile; tile += 1) {
      const times = this.#times(level, tile, isWanted);
      // Both at once, so that nobody waits twice.
      if (channel !== null && isWanted) this.#values(channel, level, tile, true);
      if (times === null) return null;
      if (timeS < (times.at(-1) ?? 0) || tile === lastTile) {
        const bin = Math.min(times.length - 2, Math.max(0, lastAtOrBefore(times, timeS)));
        return { times, bin, tile };
      }
    }
    return null;
  }

  #visit(
    what: { channel: number; level: number; isWanted: boolean },
    rows: RowSpan,
    take: (piece: Piece) => void,
  ): void {
    const { channel, level, isWanted } = what;
    const shape = this.#index.levels[level];
    if (shape === undefined) return;
    const { rowsPerBin } = shape;
    const tileRows = rowsPerBin * this.#index.tileBins;
    for (let tile = Math.floor(rows.first / tileRows); tile * tileRows < rows.end; tile += 1) {
      const times = this.#times(level, tile, isWanted);
      const values = this.#values(channel, level, tile, isWanted);
      const part = {
        first: Math.max(rows.first, tile * tileRows),
        end: Math.min(rows.end, (tile + 1) * tileRows),
      };
      if (times === null || values === null) {
        this.#visit({ ...what, level: level + 1, isWanted: level + 1 === this.#top }, part, take);
        continue;
      }
      const first = Math.floor((part.first - tile * tileRows) / rowsPerBin);
      const end = Math.min(values.lows.length, Math.ceil((part.end - tile * tileRows) / rowsPerBin));
      take({ times, ...values, first, end, rowsPerBin });
    }
  }

  #times(level: number, tile: number, isWanted: boolean): Float64Array | null {
    const found = this.#tile(0, level, tile, isWanted);
    return found !== null && 'times' in found ? found.times : null;
  }

  #values(channel: number, level: number, tile: number, isWanted: boolean): Values | null {
    const found = this.#tile(channel + 1, level, tile, isWanted);
    return found !== null && 'lows' in found ? found : null;
  }

  #tile(slot: number, level: number, tile: number, isWanted: boolean): Tile | null {
    const address = { slot, level, tile };
    return isWanted ? this.#store.want(address) : this.#store.find(address);
  }
}

/** In usual intervals of a channel. */
const LONGEST_HELD = 3;

/** Row of the last sample at or before a row of the tile; the row itself where there is none. */
function lastSample(samples: Float32Array, row: number): number {
  let at = row;
  while (at > 0 && Number.isNaN(samples[at])) at -= 1;
  return Number.isNaN(samples[at]) ? row : at;
}

/** Index of the last value at or before a bound in a rising list; -1 where there is none. */
function lastAtOrBefore(rising: Float64Array, bound: number): number {
  let [low, high] = [0, rising.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((rising[middle] as number) <= bound) low = middle + 1;
    else high = middle;
  }
  return low - 1;
}
