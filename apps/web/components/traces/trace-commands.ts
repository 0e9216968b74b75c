import type { TraceIndex } from '@pullbook/contracts';
import { rowInterval } from './line-shape';
import { keepInside, moveWindow, showMoment, widthOf, zoomWindow, type TimeWindow } from './time-window';
import type { TraceReader } from './trace-reader';
import { boundsOf, windowOfCompared, windowOfPull, type TraceState } from './trace-state';

/** What a key or a button does. */
export type TraceCommand =
  | 'cursor-left'
  | 'cursor-right'
  | 'cursor-far-left'
  | 'cursor-far-right'
  | 'to-start'
  | 'to-end'
  | 'page-left'
  | 'page-right'
  | 'zoom-in'
  | 'zoom-out'
  | 'next-pull'
  | 'previous-pull'
  | 'whole';

interface Key {
  readonly keys: readonly string[];
  readonly shift?: boolean;
  readonly shown: string;
  readonly does: string;
  readonly command: TraceCommand;
}

/** All keys, as the help tells them. */
export const traceKeys: readonly Key[] = [
  {
    keys: ['ArrowLeft'],
    shown: '←',
    does: 'cursor left, sample by sample when zoomed in',
    command: 'cursor-left',
  },
  { keys: ['ArrowRight'], shown: '→', does: 'cursor right', command: 'cursor-right' },
  {
    keys: ['ArrowLeft'],
    shift: true,
    shown: 'Shift ←',
    does: 'cursor left, ten times as far',
    command: 'cursor-far-left',
  },
  {
    keys: ['ArrowRight'],
    shift: true,
    shown: 'Shift →',
    does: 'cursor right, ten times as far',
    command: 'cursor-far-right',
  },
  { keys: ['+', '='], shown: '+', does: 'zoom in about the cursor', command: 'zoom-in' },
  { keys: ['-', '_'], shown: '−', does: 'zoom out', command: 'zoom-out' },
  { keys: ['n'], shown: 'n', does: 'next pull', command: 'next-pull' },
  { keys: ['p'], shown: 'p', does: 'previous pull', command: 'previous-pull' },
  { keys: ['PageDown'], shown: 'Page down', does: 'one window on', command: 'page-right' },
  { keys: ['PageUp'], shown: 'Page up', does: 'one window back', command: 'page-left' },
  { keys: ['Home'], shown: 'Home', does: 'cursor to the start', command: 'to-start' },
  { keys: ['End'], shown: 'End', does: 'cursor to the end', command: 'to-end' },
  { keys: ['0'], shown: '0', does: 'everything', command: 'whole' },
];

/** The command of a key; null for a key that does nothing here. */
export function commandOfKey(key: string, hasShift: boolean): TraceCommand | null {
  const fits = traceKeys.filter(({ keys }) => keys.includes(key) || keys.includes(key.toLowerCase()));
  const found =
    fits.find(({ shift = false }) => shift === hasShift) ?? fits.find(({ shift }) => shift === undefined);
  return found?.command ?? null;
}

interface Place {
  readonly index: TraceIndex;
  readonly reader: TraceReader;
  readonly state: TraceState;
  /** Width of the traces, px. */
  readonly widthPx: number;
}

const ZOOM = 1.6;
const FAR = 10;
const PAGE_SHARE = 0.85;

/** What changes when a command is given. */
export function runCommand(command: TraceCommand, place: Place): Partial<TraceState> {
  return COMMANDS[command](place);
}

const COMMANDS: Readonly<Record<TraceCommand, (place: Place) => Partial<TraceState>>> = {
  'cursor-left': (place) => stepCursor(place, -1),
  'cursor-right': (place) => stepCursor(place, 1),
  'cursor-far-left': (place) => stepCursor(place, -FAR),
  'cursor-far-right': (place) => stepCursor(place, FAR),
  'to-start': (place) => moveCursor(place, endsOf(place).fromS),
  'to-end': (place) => moveCursor(place, endsOf(place).toS),
  'page-left': (place) => page(place, -PAGE_SHARE),
  'page-right': (place) => page(place, PAGE_SHARE),
  'zoom-in': (place) => zoom(place, 1 / ZOOM),
  'zoom-out': (place) => zoom(place, ZOOM),
  'next-pull': (place) => jump('next-pull', place),
  'previous-pull': (place) => jump('previous-pull', place),
  whole: (place) => jump('whole', place),
};

/** Of the log; when compared, of what is seen. */
function endsOf({ state, index }: Place): TimeWindow {
  return state.mode === 'log' ? { fromS: index.fromS, toS: index.toS } : state.window;
}

function page({ state, index }: Place, share: number): Partial<TraceState> {
  const { window } = state;
  return { window: moveWindow(window, share * widthOf(window), boundsOf(index, state)) };
}

/** About the cursor where it is seen, else about the middle. */
function zoom({ state, index }: Place, factor: number): Partial<TraceState> {
  const { window, cursorS } = state;
  const isSeen = cursorS >= window.fromS && cursorS <= window.toS;
  const aroundS = isSeen ? cursorS : (window.fromS + window.toS) / 2;
  return { window: zoomWindow(window, factor, aroundS, boundsOf(index, state)) };
}

function jump(
  command: 'next-pull' | 'previous-pull' | 'whole',
  { state, index }: Place,
): Partial<TraceState> {
  if (state.mode === 'compare') return { window: windowOfCompared(index, state) };
  if (command === 'whole') return { window: { fromS: index.fromS, toS: boundsOf(index, state).all.toS } };
  const pulls = command === 'next-pull' ? index.pulls : [...index.pulls].reverse();
  const isBeyond = (startS: number): boolean =>
    command === 'next-pull' ? startS > state.cursorS + 1e-6 : startS < state.cursorS - 1e-6;
  const pull = pulls.find(({ startS }) => isBeyond(startS)) ?? pulls.at(-1);
  return pull === undefined ? {} : { window: windowOfPull(index, pull), cursorS: pull.startS };
}

/** One sample, or one column of pixels where samples are finer than that. */
function stepCursor(place: Place, steps: number): Partial<TraceState> {
  const { index, reader, state, widthPx } = place;
  const pixelS = widthOf(state.window) / Math.max(1, widthPx);
  const rowS = rowInterval(index);
  if (state.mode === 'log' && pixelS < rowS) {
    const timeS = reader.rowTimeFrom(state.cursorS, steps);
    if (timeS !== null) return moveCursor(place, timeS);
  }
  return moveCursor(place, state.cursorS + steps * Math.max(pixelS, state.mode === 'log' ? pixelS : rowS));
}

/** Puts the cursor at a moment and brings it into sight. */
export function moveCursor({ index, state }: Place, timeS: number): Partial<TraceState> {
  const bounds = boundsOf(index, state);
  const cursorS = Math.min(bounds.all.toS, Math.max(bounds.all.fromS, timeS));
  return { cursorS, window: showMoment(keepInside(state.window, bounds), cursorS, bounds) };
}
