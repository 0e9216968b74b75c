import type { TraceIndex, TracePull } from '@pullbook/contracts';
import type { TimeWindow, WindowBounds } from './time-window';

/** Along the log, or pulls laid over each other from the same moment. */
export type TraceMode = 'log' | 'compare';
/** The moment at which pulls are laid over each other. */
export type Alignment = 'full-load' | 'target';

/** What one looks at. */
export interface TraceState {
  readonly mode: TraceMode;
  /** Seconds of the log; in compare mode seconds from the common moment. */
  readonly window: TimeWindow;
  readonly cursorS: number;
  readonly channels: readonly number[];
  /** Pulls that are laid over each other. */
  readonly pulls: readonly number[];
  readonly alignment: Alignment;
  /** Heights follow what is shown; otherwise they stand still for the whole log. */
  readonly fitsHeights: boolean;
}

const MOST_COMPARED = 6;
const ROOM_S = 1;
/** Channels to begin with, by what answers the question about a pull; the first ones on a phone. */
const FIRST_QUANTITIES = [
  'boost-pressure',
  'engine-speed',
  'throttle',
  'target-boost-pressure',
  'solenoid-duty',
  'lambda',
  'intake-temperature',
];
const FIRST_ON_PHONE = 3;

/** What the screen opens with: the asked pull, else the first one, else the whole log. */
export function firstState(index: TraceIndex, asked: number | null, isNarrow: boolean): TraceState {
  const pull = index.pulls[asked ?? 0];
  return {
    mode: 'log',
    window: pull === undefined ? { fromS: index.fromS, toS: index.toS } : windowOfPull(index, pull),
    cursorS: pull?.startS ?? index.fromS,
    channels: firstChannels(index, isNarrow),
    pulls: comparedFirst(index, asked),
    alignment: 'full-load',
    fitsHeights: false,
  };
}

/** A pull with a second before and behind it. */
export function windowOfPull(index: TraceIndex, { startS, endS }: TracePull): TimeWindow {
  return {
    fromS: Math.max(index.fromS, startS - ROOM_S),
    toS: Math.min(index.toS, Math.max(endS, startS + 1) + ROOM_S),
  };
}

/** Longest pull, with a second before and behind, counted from the common moment. */
export function windowOfCompared(index: TraceIndex, { pulls, alignment }: TraceState): TimeWindow {
  const longestS = pulls.reduce((most, number) => {
    const pull = index.pulls[number];
    return pull === undefined ? most : Math.max(most, pull.endS - pull.startS);
  }, 1);
  const beforeS = alignment === 'full-load' ? ROOM_S : ROOM_S + longestS / 2;
  return { fromS: -beforeS, toS: longestS + ROOM_S };
}

const SAMPLES_AT_LEAST = 8;

/** How far and how close one can look. */
export function boundsOf(index: TraceIndex, state: TraceState): WindowBounds {
  const leastS = SAMPLES_AT_LEAST / (index.sampleRateHz ?? SAMPLES_AT_LEAST);
  if (state.mode === 'log')
    return { all: { fromS: index.fromS, toS: Math.max(index.toS, index.fromS + leastS) }, leastS };
  const { fromS, toS } = windowOfCompared(index, state);
  const width = toS - fromS;
  return { all: { fromS: fromS - width, toS: toS + width }, leastS };
}

function firstChannels(index: TraceIndex, isNarrow: boolean): number[] {
  const wanted = isNarrow ? FIRST_QUANTITIES.slice(0, FIRST_ON_PHONE) : FIRST_QUANTITIES;
  const found = index.channels.flatMap(({ quantity, sampleCount }, number) =>
    wanted.includes(quantity) && sampleCount > 0 ? [number] : [],
  );
  return found.length > 0 ? found : index.channels.slice(0, 2).map((_, number) => number);
}

function comparedFirst({ pulls }: TraceIndex, asked: number | null): number[] {
  const usable = pulls.filter((pull) => pull.usable).map((pull) => pull.index);
  const first = usable.length > 0 ? usable : pulls.map((pull) => pull.index);
  const chosen = first.slice(-MOST_COMPARED);
  return asked === null || chosen.includes(asked)
    ? chosen
    : [...chosen.slice(1 - MOST_COMPARED), asked].sort((a, b) => a - b);
}
