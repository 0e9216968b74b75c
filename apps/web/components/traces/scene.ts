import type { TraceIndex } from '@pullbook/contracts';
import { channelUnit, type ChannelBaseUnit, type ChannelUnit } from '@pullbook/tuning-math';
import type { TraceLayout } from './lay-out';
import type { Onset } from './onset-of-pull';
import { widthOf } from './time-window';
import type { TraceReader } from './trace-reader';
import type { TraceState } from './trace-state';
import type { TraceTheme } from './trace-theme';

/** The person's units, as far as channels need them. */
export type PersonUnits = Parameters<typeof channelUnit>[1];

/** All that drawing one picture needs. */
export interface Scene {
  readonly context: CanvasRenderingContext2D;
  readonly index: TraceIndex;
  readonly reader: TraceReader;
  readonly state: TraceState;
  readonly layout: TraceLayout;
  readonly theme: TraceTheme;
  readonly units: PersonUnits;
  readonly onsets: ReadonlyMap<number, Onset | null>;
}

/** Where a moment of the window stands. */
export function xOf({ layout, state }: Scene, timeS: number): number {
  const share = (timeS - state.window.fromS) / widthOf(state.window);
  return layout.left + share * (layout.right - layout.left);
}

/** Seconds of the log at the window's zero: 0 along the log, a pull's common moment when compared; null if unknown. */
export function originOf({ state, onsets }: Scene, pull: number | null): number | null {
  if (state.mode === 'log' || pull === null) return 0;
  return onsets.get(pull)?.timeS ?? null;
}

export function unitOfLane(unit: string, units: PersonUnits): ChannelUnit {
  return channelUnit(unit as ChannelBaseUnit, units);
}

const FACE = "'Atkinson Hyperlegible Next Variable', system-ui, sans-serif";

/** The house's typeface at a size in px. */
export function face(size: number, weight = 400): string {
  return `${weight} ${size}px ${FACE}`;
}
