/** What is written down of a running car at every step, noise-free. */
export const TRACE_COLUMNS = [
  'timeS',
  'boostKpa',
  'chargeAbsKpa',
  'engineRpm',
  'speedMps',
  'wheelMps',
  'throttleRatio',
  'dutyPct',
  'chargeC',
  'coolerC',
  'shaftRadPerS',
  'rodM',
  'liftKpa',
  'exhaustAbsKpa',
  'airKgPerS',
  'gear',
  'fuelRatio',
  'phase',
] as const;

export type TraceColumn = (typeof TRACE_COLUMNS)[number];

/** One value of each column. */
export type TraceRow = Readonly<Record<TraceColumn, number>>;

/** Columns of one length; `timeS` rises strictly, in unequal steps. `phase` counts the phases of the drive. */
export type Trace = Readonly<Record<TraceColumn, Float64Array>>;

export interface TraceRecorder {
  readonly add: (row: TraceRow) => void;
  readonly finish: () => Trace;
}

const FIRST_CAPACITY = 4096;

/** Collects rows into a trace; its arrays double when full, so that adding costs O(1). */
export function recordTrace(): TraceRecorder {
  let capacity = FIRST_CAPACITY;
  let length = 0;
  const columns = TRACE_COLUMNS.map(() => new Float64Array(capacity));
  const grow = (): void => {
    capacity *= 2;
    columns.forEach((column, index) => {
      const wider = new Float64Array(capacity);
      wider.set(column);
      columns[index] = wider;
    });
  };
  return {
    add: (row) => {
      if (length === capacity) grow();
      for (let i = 0; i < columns.length; i++) {
        const column = columns[i];
        const name = TRACE_COLUMNS[i];
        if (column !== undefined && name !== undefined) column[length] = row[name];
      }
      length += 1;
    },
    finish: () =>
      Object.fromEntries(
        TRACE_COLUMNS.map((name, index) => [name, columns[index]?.slice(0, length) ?? new Float64Array(0)]),
      ) as Record<TraceColumn, Float64Array>,
  };
}

/** The rows of a trace from `first` up to but not including `end`, as views. */
export function cutTrace(trace: Trace, first: number, end: number): Trace {
  return Object.fromEntries(TRACE_COLUMNS.map((name) => [name, trace[name].subarray(first, end)])) as Record<
    TraceColumn,
    Float64Array
  >;
}
