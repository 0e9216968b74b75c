import type { TraceIndex, TracePull } from '@pullbook/contracts';
import { buildMinMaxLevels, levelShapes, TILE_BINS } from '@pullbook/tuning-math';
import { TileStore, type TileAddress } from './tile-store';
import { TraceReader } from './trace-reader';

/** What the tests of the traces look at; not part of the screen. */
export interface TestLog {
  readonly index: TraceIndex;
  readonly reader: TraceReader;
  readonly store: TileStore;
  /** Runs one frame and waits for all that it wanted. */
  readonly frame: (draw: () => void) => Promise<void>;
}

const uuid = '00000000-0000-7000-8000-000000000000';

/** A pull of a log, usable and not in the book unless told otherwise. */
export function testPull(index: number, more: Partial<TracePull> = {}): TracePull {
  return {
    index,
    startS: 10 * index + 5,
    endS: 10 * index + 11,
    gear: 3,
    peakKpa: 120,
    settledKpa: 118,
    usable: true,
    reasons: [],
    record: null,
    ...more,
  };
}

/** A log at an even rate, whose tiles come as from the server. */
export function testIndexOf(
  columns: readonly Float32Array[],
  rateHz: number,
  pulls: readonly TracePull[] = [],
): TestLog {
  const rowCount = columns[0]?.length ?? 0;
  const timeS = Float64Array.from({ length: rowCount }, (_, row) => row / rateHz);
  const index: TraceIndex = {
    state: 'ready',
    build: '0123456789abcdef',
    log: { id: uuid, fileName: 'test.csv', recordedAt: '2026-11-25T09:00:00Z' },
    visitId: uuid,
    carId: uuid,
    plate: 'TEST 1',
    rowCount,
    fromS: 0,
    toS: (rowCount - 1) / rateHz,
    timeOriginS: 0,
    sampleRateHz: rateHz,
    tileBins: TILE_BINS,
    levels: levelShapes(rowCount),
    channels: columns.map((values, number) => channelOf(values, number, rateHz)),
    pulls: [...pulls],
    warnings: [],
  };
  const store = new TileStore(
    async (address) => bytesOf(timeS, columns, address),
    () => undefined,
  );
  const frame = async (draw: () => void): Promise<void> => {
    store.beginFrame();
    draw();
    store.endFrame();
    while (store.isWaiting) await new Promise((resolve) => setTimeout(resolve, 0));
  };
  return { index, store, reader: new TraceReader(index, store), frame };
}

function channelOf(values: Float32Array, number: number, rateHz: number): TraceIndex['channels'][number] {
  const [lowest, highest] = [
    values.reduce((a, b) => Math.min(a, b)),
    values.reduce((a, b) => Math.max(a, b)),
  ];
  return {
    name: number === 0 ? 'Boost' : number === 1 ? 'Boost, filtered' : `Channel ${number}`,
    header: number === 1 ? null : `c${number}`,
    quantity: number < 2 ? 'boost-pressure' : 'unknown',
    unit: number < 2 ? 'kPa' : 'none',
    sampleCount: values.length,
    intervalS: 1 / rateHz,
    lowest,
    highest,
    usualLow: lowest,
    usualHigh: highest,
  };
}

function bytesOf(
  timeS: Float64Array,
  columns: readonly Float32Array[],
  { slot, level, tile }: TileAddress,
): ArrayBuffer {
  const first = tile * TILE_BINS;
  if (slot === 0) return startsOf(timeS, level).slice(first, first + TILE_BINS + 1).buffer;
  const values = columns[slot - 1];
  if (values === undefined) throw new Error(`no column ${slot - 1}`);
  if (level === 0) return values.slice(first, first + TILE_BINS).buffer;
  const bins = buildMinMaxLevels(values)[level - 1];
  if (bins === undefined) throw new Error(`no level ${level}`);
  const cut = [bins.lows, bins.highs].flatMap((side) => [...side.subarray(first, first + TILE_BINS)]);
  return Float32Array.from(cut).buffer;
}

function startsOf(timeS: Float64Array, level: number): Float64Array<ArrayBuffer> {
  const rowsPerBin = levelShapes(timeS.length)[level]?.rowsPerBin ?? 1;
  const starts = timeS.filter((_, row) => row % rowsPerBin === 0);
  const [first = 0, second = 0] = timeS;
  return Float64Array.from([...starts, (timeS.at(-1) ?? 0) + second - first]);
}
