/** Where a tile lies: slot 0 holds the times, slot n + 1 the channel n. */
export interface TileAddress {
  readonly slot: number;
  readonly level: number;
  readonly tile: number;
}

/** Numbers of one tile: times of bins and of the one behind; or lowest and highest sample of each bin. */
export type Tile =
  { readonly times: Float64Array } | { readonly lows: Float32Array; readonly highs: Float32Array };

const MOST_AT_ONCE = 8;
const MOST_BYTES = 96 << 20;
/** A tile that did not come is asked for again after this time. */
const RETRY_MS = 2000;

/**
 * The tiles that have come in, the last used ones at hand. What a frame wants and is not here is fetched; what the
 * next frame no longer wants is not.
 */
export class TileStore {
  readonly #load: (address: TileAddress) => Promise<ArrayBuffer>;
  readonly #onChange: () => void;
  readonly #tiles = new Map<string, Tile>();
  readonly #wanted = new Map<string, TileAddress>();
  readonly #loading = new Set<string>();
  readonly #failedAtMs = new Map<string, number>();
  #heldBytes = 0;
  #fetchedBytes = 0;

  constructor(load: (address: TileAddress) => Promise<ArrayBuffer>, onChange: () => void) {
    this.#load = load;
    this.#onChange = onChange;
  }

  /** Bytes of all tiles that came in so far, unpacked. */
  get fetchedBytes(): number {
    return this.#fetchedBytes;
  }

  /** True while something that was wanted has not come. */
  get isWaiting(): boolean {
    return this.#loading.size > 0 || this.#wanted.size > 0;
  }

  get hasFailed(): boolean {
    return this.#failedAtMs.size > 0;
  }

  /** A new frame begins: what only the last one wanted is let go. */
  beginFrame(): void {
    this.#wanted.clear();
  }

  /** The tile if it is here. */
  find(address: TileAddress): Tile | null {
    const key = keyOf(address);
    const tile = this.#tiles.get(key);
    if (tile === undefined) return null;
    this.#tiles.delete(key);
    this.#tiles.set(key, tile);
    return tile;
  }

  /** The same; and where it is not here, it will be. */
  want(address: TileAddress): Tile | null {
    const tile = this.find(address);
    const key = keyOf(address);
    if (tile === null && !this.#loading.has(key) && !this.#hasJustFailed(key)) this.#wanted.set(key, address);
    return tile;
  }

  /** All is wanted that this frame wants: fetch it. */
  endFrame(): void {
    for (const [key, address] of this.#wanted) {
      if (this.#loading.size >= MOST_AT_ONCE) return;
      this.#wanted.delete(key);
      this.#loading.add(key);
      void this.#fetch(key, address);
    }
  }

  async #fetch(key: string, address: TileAddress): Promise<void> {
    try {
      const bytes = await this.#load(address);
      this.#failedAtMs.delete(key);
      this.#keep(key, tileOf(address, bytes), bytes.byteLength);
    } catch {
      this.#failedAtMs.set(key, performance.now());
      setTimeout(() => this.#onChange(), RETRY_MS);
    } finally {
      this.#loading.delete(key);
      this.endFrame();
      this.#onChange();
    }
  }

  #hasJustFailed(key: string): boolean {
    return performance.now() - (this.#failedAtMs.get(key) ?? -Infinity) < RETRY_MS;
  }

  #keep(key: string, tile: Tile, byteCount: number): void {
    this.#tiles.set(key, tile);
    this.#fetchedBytes += byteCount;
    this.#heldBytes += byteCount;
    for (const [oldest, held] of this.#tiles) {
      if (this.#heldBytes <= MOST_BYTES) return;
      this.#tiles.delete(oldest);
      this.#heldBytes -= bytesOf(held);
    }
  }
}

const keyOf = ({ slot, level, tile }: TileAddress): string => `${slot}/${level}/${tile}`;

function tileOf({ slot, level }: TileAddress, bytes: ArrayBuffer): Tile {
  if (slot === 0) return { times: new Float64Array(bytes) };
  const values = new Float32Array(bytes);
  if (level === 0) return { lows: values, highs: values };
  return { lows: values.subarray(0, values.length / 2), highs: values.subarray(values.length / 2) };
}

function bytesOf(tile: Tile): number {
  return 'times' in tile ? tile.times.buffer.byteLength : tile.lows.buffer.byteLength;
}
