import type { TraceIndex } from '@pullbook/contracts';
import { onsetOfPull, type Onset } from './onset-of-pull';
import { TileStore, type TileAddress } from './tile-store';
import { TraceReader } from './trace-reader';
import type { TraceState } from './trace-state';

/** What React sees: a new one whenever something changed, at most once for each frame. */
export interface TraceSight {
  readonly state: TraceState;
  readonly onsets: ReadonlyMap<number, Onset | null>;
  /** Something that is shown is still on its way. */
  readonly isWaiting: boolean;
  readonly hasFailed: boolean;
}

type Draw = (sight: TraceSight) => void;

/** Exact values are fetched once the cursor rests so long. */
const REST_MS = 90;

/** One log on the screen: what is looked at, its tiles, and the frames in which it is drawn. */
export class TraceView {
  readonly reader: TraceReader;
  readonly #store: TileStore;
  readonly #draws = new Set<Draw>();
  readonly #listeners = new Set<() => void>();
  #index: TraceIndex;
  #state: TraceState;
  #sight: TraceSight;
  #frame = 0;
  #restsAtMs = 0;

  constructor(
    index: TraceIndex,
    load: (index: TraceIndex, address: TileAddress) => Promise<ArrayBuffer>,
    first: TraceState,
  ) {
    this.#index = index;
    this.#store = new TileStore((address) => load(index, address), this.refresh);
    this.reader = new TraceReader(index, this.#store);
    this.#state = first;
    this.#sight = { state: first, onsets: new Map(), isWaiting: true, hasFailed: false };
  }

  get index(): TraceIndex {
    return this.#index;
  }

  /** Takes what the book knows of the same samples by now: which pulls are in it. */
  takeIndex(index: TraceIndex): void {
    this.#index = index;
    this.refresh();
  }

  /** What is asked for by now, though the frame that shows it may still be to come. */
  get state(): TraceState {
    return this.#state;
  }

  readonly sight = (): TraceSight => this.#sight;

  readonly subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };

  /** Draws in every frame in which something changed; also at once. @returns stops it */
  addDraw(draw: Draw): () => void {
    this.#draws.add(draw);
    this.refresh();
    return () => this.#draws.delete(draw);
  }

  change(patch: Partial<TraceState>): void {
    if (patch.cursorS !== undefined && patch.cursorS !== this.#state.cursorS) {
      this.#restsAtMs = performance.now() + REST_MS;
      setTimeout(this.refresh, REST_MS + 1);
    }
    this.#state = { ...this.#state, ...patch };
    this.refresh();
  }

  /** Asks for a frame. */
  readonly refresh = (): void => {
    if (this.#frame === 0) this.#frame = requestAnimationFrame(this.#draw);
  };

  stop(): void {
    cancelAnimationFrame(this.#frame);
    this.#frame = 0;
  }

  readonly #draw = (): void => {
    this.#frame = 0;
    this.#store.beginFrame();
    const sight = { ...this.#sight, state: this.#state, onsets: this.#onsets() };
    for (const draw of this.#draws) draw(sight);
    if (performance.now() >= this.#restsAtMs) this.#wantReadings(sight);
    this.#store.endFrame();
    this.#sight = { ...sight, isWaiting: this.#store.isWaiting, hasFailed: this.#store.hasFailed };
    for (const listener of this.#listeners) listener();
  };

  #onsets(): Map<number, Onset | null> {
    const { mode, pulls, alignment } = this.#state;
    if (mode === 'log') return new Map();
    return new Map(pulls.map((pull) => [pull, onsetOfPull(this.index, this.reader, pull, alignment)]));
  }

  #wantReadings({ state, onsets }: TraceSight): void {
    for (const timeS of momentsOf(state, onsets)) {
      for (const channel of this.index.channels.keys()) this.reader.readAt(channel, timeS, true);
    }
  }
}

/** The moments of the log that the cursor stands at: one, or one for each compared pull. */
export function momentsOf(
  { mode, cursorS, pulls }: TraceState,
  onsets: ReadonlyMap<number, Onset | null>,
): number[] {
  if (mode === 'log') return [cursorS];
  return pulls.flatMap((pull) => {
    const onset = onsets.get(pull) ?? null;
    return onset === null ? [] : [onset.timeS + cursorS];
  });
}
