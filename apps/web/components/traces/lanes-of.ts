import type { TraceIndex } from '@pullbook/contracts';
import { filteredLook, lineLook, rawLook, type LineLook } from './line-look';
import type { TraceState } from './trace-state';

/** One line of a lane: a channel, along the log or of one pull. */
export interface TraceLine {
  readonly channel: number;
  /** Pull that the line is of, in compare mode. */
  readonly pull: number | null;
  readonly label: string;
  readonly look: LineLook;
}

/** Lines that share a scale, one above the other with the other lanes. */
export interface Lane {
  /** Unit that the samples are kept in. */
  readonly unit: string;
  readonly title: string;
  readonly lines: readonly TraceLine[];
  readonly hasBoost: boolean;
}

/** Along the log: one lane for each unit. Compared: one lane for each channel, with a line for each pull. */
export function lanesOf(index: TraceIndex, state: TraceState): Lane[] {
  return state.mode === 'log' ? lanesByUnit(index, state) : lanesByChannel(index, state);
}

/** Bare numbers share nothing: each has its lane. */
function lanesByUnit(index: TraceIndex, { channels }: TraceState): Lane[] {
  const groups = new Map<string, number[]>();
  for (const channel of [...channels].sort((a, b) => a - b)) {
    const facts = index.channels[channel];
    if (facts === undefined) continue;
    const key = facts.unit === 'none' || facts.unit === 'count' ? `${facts.unit}${channel}` : groupOf(facts);
    groups.set(key, [...(groups.get(key) ?? []), channel]);
  }
  return [...groups.values()].map((group) => {
    const hasFiltered = group.some((channel) => isFiltered(index, channel));
    const lines = group.map((channel, position) => ({
      channel,
      pull: null,
      label: index.channels[channel]?.name ?? '',
      look: lookOf(index, channel, hasFiltered ? position - 1 : position, hasFiltered),
    }));
    const title = lines.map(({ label }) => label).join(', ');
    return {
      unit: unitOf(index, group[0]),
      title,
      lines,
      hasBoost: group.some((one) => isBoost(index, one)),
    };
  });
}

function lanesByChannel(index: TraceIndex, { channels, pulls }: TraceState): Lane[] {
  return [...channels]
    .sort((a, b) => a - b)
    .map((channel) => ({
      unit: unitOf(index, channel),
      title: index.channels[channel]?.name ?? '',
      hasBoost: isBoost(index, channel),
      lines: pulls.map((pull, position) => ({
        channel,
        pull,
        label: pullLabel(index, pull),
        look: lineLook(position),
      })),
    }));
}

/** '2: 40 %' for a pull of the book, else '2: at 31.2 s'. */
export function pullLabel({ pulls }: TraceIndex, number: number): string {
  const pull = pulls[number];
  if (pull === undefined) return String(number + 1);
  const what = pull.record === null ? `at ${pull.startS.toFixed(1)} s` : `${pull.record.dutyPct} % duty`;
  return `${number + 1}: ${what}`;
}

/** Absolute pressures lie a hundred kPa above gauge ones: a scale of both would flatten either. */
function groupOf({ unit, quantity }: TraceIndex['channels'][number]): string {
  const isAbsolute = quantity === 'manifold-absolute-pressure' || quantity === 'barometric-pressure';
  return isAbsolute ? `${unit} absolute` : unit;
}

function lookOf(index: TraceIndex, channel: number, position: number, hasFiltered: boolean): LineLook {
  if (isFiltered(index, channel)) return filteredLook;
  return hasFiltered && isBoost(index, channel) ? rawLook : lineLook(position);
}

const isBoost = (index: TraceIndex, channel: number): boolean =>
  index.channels[channel]?.quantity === 'boost-pressure';
const isFiltered = (index: TraceIndex, channel: number): boolean =>
  isBoost(index, channel) && index.channels[channel]?.header === null && channel === filteredChannel(index);
const unitOf = (index: TraceIndex, channel: number | undefined): string =>
  index.channels[channel ?? -1]?.unit ?? 'none';

/** Number of the filtered boost: the second of the two that stand first; null where a log has none. */
export function filteredChannel({ channels }: TraceIndex): number | null {
  const hasBoth = channels[0]?.quantity === 'boost-pressure' && channels[1]?.quantity === 'boost-pressure';
  return hasBoth ? 1 : null;
}
