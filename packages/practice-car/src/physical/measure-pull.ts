import { cutTrace, type Trace, type TraceColumn } from './trace.js';

/** What really happened in a pull, from its noise-free trace. */
export interface PullTruth {
  readonly gear: number;
  /** First and last moment with the throttle at least 90 % open. */
  readonly startS: number;
  readonly endS: number;
  /** Highest manifold pressure of the pull, gauge. */
  readonly peakKpa: number;
  readonly peakRpm: number;
  readonly peakTimeS: number;
  /** Mean over up to one second from `settledFromS`. */
  readonly settledKpa: number;
  readonly settledFromS: number;
  /** (peak - settled) / settled; null when boost settled at less than 1 kPa. */
  readonly overshootPct: number | null;
  /** From 10 % to 90 % of settled boost; null when boost never got there or started above. */
  readonly riseTimeS: number | null;
  /** Engine speed at which 90 % of the target was first reached; null when it was not. */
  readonly onsetRpm: number | null;
  /** Mean over the last tenth of the pull, and how far that lies below the settled boost. */
  readonly finalKpa: number;
  readonly taperPct: number | null;
  readonly wasFuelCut: boolean;
}

/** Throttle from which the engine counts as fully loaded. */
const FULL_LOAD_RATIO = 0.9;
/** Boost counts as settled from the last moment at which it leaves this band about the line through its later half. */
const SETTLED_BAND_RATIO = 0.02;
/** Settled boost is the mean over this long from there, so that a taper towards the rev limit is not in it. */
const SETTLED_WINDOW_S = 1;
/** Below this there is no boost to speak of, and no share of it. */
const LEAST_SETTLED_KPA = 1;

/** Moment at which a series first reaches a level, interpolated; null when it never does. */
export function firstReachS(timeS: Float64Array, series: Float64Array, level: number): number | null {
  for (let i = 0; i < series.length; i++) {
    const value = series[i] ?? 0;
    if (value < level) continue;
    if (i === 0) return null;
    const before = series[i - 1] ?? 0;
    const share = (level - before) / (value - before);
    return (timeS[i - 1] ?? 0) + share * ((timeS[i] ?? 0) - (timeS[i - 1] ?? 0));
  }
  return null;
}

/** Mean over time of rows `first` to `last` (trapezoids); the value itself when they are one. */
function meanBetween(pull: Trace, first: number, last: number): number {
  const { timeS, boostKpa } = pull;
  let area = 0;
  for (let i = first + 1; i <= last; i++)
    area += (((boostKpa[i] ?? 0) + (boostKpa[i - 1] ?? 0)) / 2) * ((timeS[i] ?? 0) - (timeS[i - 1] ?? 0));
  const span = (timeS[last] ?? 0) - (timeS[first] ?? 0);
  return span > 0 ? area / span : (boostKpa[first] ?? 0);
}

/** Least-squares line through rows `first` to the end, as a function of time. */
function lineFrom(pull: Trace, first: number): (timeS: number) => number {
  const times = pull.timeS.subarray(first);
  const boosts = pull.boostKpa.subarray(first);
  const meanTime = times.reduce((sum, value) => sum + value, 0) / times.length;
  const meanBoost = boosts.reduce((sum, value) => sum + value, 0) / boosts.length;
  let cross = 0;
  let square = 0;
  for (let i = 0; i < times.length; i++) {
    const away = (times[i] ?? 0) - meanTime;
    cross += away * ((boosts[i] ?? 0) - meanBoost);
    square += away * away;
  }
  const slope = square > 0 ? cross / square : 0;
  return (timeS) => meanBoost + slope * (timeS - meanTime);
}

/** First row from which on boost stays within the band about the line through the later half of what follows 90 % of peak. */
function settledRow(pull: Trace, peakKpa: number): number {
  const { boostKpa, timeS } = pull;
  const reached = Math.max(
    0,
    boostKpa.findIndex((value) => value >= 0.9 * peakKpa),
  );
  const middle = Math.min(boostKpa.length - 1, Math.floor((reached + boostKpa.length) / 2));
  const line = lineFrom(pull, middle);
  for (let row = middle; row > reached; row--) {
    const expected = line(timeS[row] ?? 0);
    if (Math.abs((boostKpa[row] ?? 0) - expected) > SETTLED_BAND_RATIO * Math.abs(expected)) return row + 1;
  }
  return reached;
}

function rowsOfFullLoad(trace: Trace): readonly [number, number] {
  const first = trace.throttleRatio.findIndex((ratio) => ratio >= FULL_LOAD_RATIO);
  const last = trace.throttleRatio.findLastIndex((ratio) => ratio >= FULL_LOAD_RATIO);
  return [first, last];
}

/** First and last row of the longest stretch of full load: a lift in the middle does not count towards settled boost. */
function longestFullLoad(pull: Trace): readonly [number, number] {
  let best: readonly [number, number] = [0, 0];
  let first = -1;
  pull.throttleRatio.forEach((ratio, row) => {
    if (ratio < FULL_LOAD_RATIO) first = -1;
    else if (first < 0) first = row;
    if (first >= 0 && row - first > best[1] - best[0]) best = [first, row];
  });
  return best;
}

interface Plateau {
  readonly settledKpa: number;
  readonly settledFromS: number;
  readonly finalKpa: number;
}

/** Settled boost and what is left of it in the last tenth, of one stretch of full load. */
function plateauOf(stretch: Trace): Plateau {
  const { boostKpa, timeS } = stretch;
  const lastRow = boostKpa.length - 1;
  const most = boostKpa.reduce((best, value) => Math.max(best, value), -Infinity);
  const from = Math.min(settledRow(stretch, most), lastRow);
  const settledFromS = timeS[from] ?? 0;
  const windowEnd = timeS.findIndex((time) => time >= settledFromS + SETTLED_WINDOW_S);
  return {
    settledKpa: meanBetween(stretch, from, windowEnd < 0 ? lastRow : windowEnd),
    settledFromS,
    finalKpa: meanBetween(stretch, Math.floor(0.9 * lastRow), lastRow),
  };
}

function riseTime(trace: Trace, settledKpa: number): number | null {
  if (settledKpa < LEAST_SETTLED_KPA) return null;
  const low = firstReachS(trace.timeS, trace.boostKpa, 0.1 * settledKpa);
  const high = firstReachS(trace.timeS, trace.boostKpa, 0.9 * settledKpa);
  return low === null || high === null ? null : high - low;
}

/**
 * Measures one pull on its noise-free trace.
 *
 * Settled boost is the mean over up to one second from the moment after which boost stays within 2 % of the straight
 * line through its later half (counted from 90 % of peak), so neither the overshoot nor a long taper is in it.
 * Overshoot is relative to settled gauge boost; rise time is 10 % to 90 % of settled boost (words of IEEE 181).
 *
 * @param trace rows of one pull phase, in time order
 * @param targetKpa for the onset speed; null = none asked
 * @returns null when the throttle never opened
 */
export function measurePull(trace: Trace, targetKpa: number | null): PullTruth | null {
  const [first, last] = rowsOfFullLoad(trace);
  if (first < 0 || last <= first) return null;
  const pull = cutTrace(trace, first, last + 1);
  const lastRow = pull.boostKpa.length - 1;
  const at = (column: TraceColumn, row: number): number => pull[column][row] ?? 0;
  const peakRow = pull.boostKpa.reduce((best, value, row) => (value > at('boostKpa', best) ? row : best), 0);
  const peakKpa = at('boostKpa', peakRow);
  const [stretchFirst, stretchLast] = longestFullLoad(pull);
  const plateau = plateauOf(cutTrace(pull, stretchFirst, stretchLast + 1));
  const { settledKpa } = plateau;
  const shareOfSettled = (kpa: number): number | null =>
    settledKpa < LEAST_SETTLED_KPA ? null : (100 * kpa) / settledKpa;
  const onsetRow = targetKpa === null ? -1 : pull.boostKpa.findIndex((value) => value >= 0.9 * targetKpa);
  return {
    gear: at('gear', 0),
    startS: at('timeS', 0),
    endS: at('timeS', lastRow),
    peakKpa,
    peakRpm: at('engineRpm', peakRow),
    peakTimeS: at('timeS', peakRow),
    ...plateau,
    overshootPct: shareOfSettled(peakKpa - settledKpa),
    riseTimeS: riseTime(trace, settledKpa),
    onsetRpm: onsetRow < 0 ? null : at('engineRpm', onsetRow),
    taperPct: shareOfSettled(settledKpa - plateau.finalKpa),
    wasFuelCut: pull.fuelRatio.some((ratio) => ratio < 0.5),
  };
}
