import type { TraceIndex } from '@pullbook/contracts';
import type { Lane } from './lanes-of';

/** Lowest and highest figure of a lane's scale, in the unit of the store. */
export interface LaneSpan {
  readonly low: number;
  readonly high: number;
}

const ROOM_SHARE = 0.06;
/** So much wider than usual, extremes are single wild samples. */
const WILD_RATIO = 1.6;
const LEAST_SPAN: Readonly<Record<string, number>> = {
  kPa: 10,
  rpm: 200,
  pct: 10,
  C: 4,
  kmh: 5,
  lambda: 0.1,
};

/** The span that shows a lane: what its channels usually read in the whole log; single wild samples run out of it. */
export function laneSpan(index: TraceIndex, lane: Lane, figures: readonly number[]): LaneSpan {
  const ends = lane.lines.flatMap(({ channel }) => {
    const facts = index.channels[channel];
    if (facts === undefined || facts.lowest === null || facts.highest === null) return [];
    const usual = [facts.usualLow ?? facts.lowest, facts.usualHigh ?? facts.highest] as const;
    const isWild = facts.highest - facts.lowest > WILD_RATIO * (usual[1] - usual[0]);
    return isWild ? [...usual] : [facts.lowest, facts.highest];
  });
  const span = withRoom([...ends, ...figures], lane.unit);
  return lane.hasBoost && index.pulls.length > 0
    ? { ...span, low: Math.max(span.low, DEEPEST * span.high) }
    : span;
}

/** Pulls are about boost: deep vacuum runs out of the lane unless the heights fit what is seen. */
const DEEPEST = -0.3;

/** The same from what is seen. */
export function withRoom(ends: readonly number[], unit: string): LaneSpan {
  const finite = ends.filter((end) => Number.isFinite(end));
  if (finite.length === 0) return { low: 0, high: LEAST_SPAN[unit] ?? 1 };
  const [low, high] = [Math.min(...finite), Math.max(...finite)];
  const width = Math.max(high - low, LEAST_SPAN[unit] ?? 0.1 * Math.max(Math.abs(low), 1));
  const missing = (width - (high - low)) / 2;
  return { low: low - missing - ROOM_SHARE * width, high: high + missing + ROOM_SHARE * width };
}
