/** Time stamps made to rise strictly, and what had to be done for it. */
export interface MendedTime {
  /** Rows to keep, in order; null where all rows stay as they are. */
  readonly keep: Uint32Array | null;
  readonly timeS: Float64Array;
  readonly untimedRows: number;
  readonly repeatedRows: number;
  /** Places where the clock fell back: midnight, or the logger was started again. */
  readonly restarts: number;
}

const DAY_S = 86_400;
const RESTART_GAP_S = 60;

/**
 * Makes time rise strictly. Rows without a time and rows that repeat the time before them are left out,
 * lone stamps out of line too, except where a coarse clock gives many rows one stamp: those are spread evenly until the next stamp. A
 * clock that falls by about a day ran past midnight; any other fall is a new start of the logger, put
 * behind the old one with a gap of a minute, so that no pull can span it.
 *
 * @param timeS seconds as logged; NaN where the row has none
 * @param isClock time of day, so that midnight can pass
 * Source: common practice, no source. Cost: O(n).
 */
export function mendTime(timeS: Float64Array, isClock: boolean): MendedTime {
  const unrolled = unroll(withoutLoneStamps(timeS), isClock);
  const spread = isCoarse(unrolled.timeS) ? spreadTies(unrolled.timeS) : unrolled.timeS;
  const keep = new Uint32Array(spread.length);
  let count = 0;
  let last = -Infinity;
  let untimedRows = 0;
  for (let row = 0; row < spread.length; row += 1) {
    const time = spread[row] as number;
    if (Number.isNaN(time)) untimedRows += 1;
    else if (time > last) {
      keep[count] = row;
      count += 1;
      last = time;
    }
  }
  const kept = keep.subarray(0, count);
  return {
    keep: count === spread.length ? null : kept,
    timeS: count === spread.length ? spread : Float64Array.from(kept, (row) => spread[row] as number),
    untimedRows,
    repeatedRows: spread.length - count - untimedRows,
    restarts: unrolled.restarts,
  };
}

/** A single stamp out of line (garbled digits) is no stamp. */
function withoutLoneStamps(timeS: Float64Array): Float64Array {
  const clean = Float64Array.from(timeS);
  for (let row = 1; row + 1 < clean.length; row += 1) {
    const [before, time, after] = [clean[row - 1] as number, clean[row] as number, clean[row + 1] as number];
    if (after > before && (time > after || time < before)) clean[row] = NaN;
  }
  return clean;
}

function unroll(timeS: Float64Array, isClock: boolean): { timeS: Float64Array; restarts: number } {
  const unrolled = new Float64Array(timeS.length);
  let offset = 0;
  let last = NaN;
  let restarts = 0;
  for (let row = 0; row < timeS.length; row += 1) {
    const time = (timeS[row] as number) + offset;
    const fall = last - time;
    if (fall > 0.5) {
      const pastMidnight = isClock && Math.abs(fall - DAY_S) < DAY_S / 2;
      const shift = pastMidnight ? DAY_S : fall + RESTART_GAP_S;
      offset += shift;
      restarts += pastMidnight ? 0 : 1;
      unrolled[row] = time + shift;
    } else unrolled[row] = time;
    if (!Number.isNaN(time)) last = unrolled[row] as number;
  }
  return { timeS: unrolled, restarts };
}

/** More than half of all rows share the stamp of the row before. */
function isCoarse(timeS: Float64Array): boolean {
  let ties = 0;
  for (let row = 1; row < timeS.length; row += 1) if (timeS[row] === timeS[row - 1]) ties += 1;
  return ties > timeS.length / 2;
}

function spreadTies(timeS: Float64Array): Float64Array {
  const spread = Float64Array.from(timeS);
  let start = 0;
  for (let row = 1; row <= timeS.length; row += 1) {
    if (row < timeS.length && timeS[row] === timeS[start]) continue;
    const from = timeS[start] as number;
    const next = row < timeS.length ? (timeS[row] as number) : from + (from - previousStamp(timeS, start));
    for (let tie = start + 1; tie < row; tie += 1) {
      spread[tie] = from + ((next - from) * (tie - start)) / (row - start);
    }
    start = row;
  }
  return spread;
}

function previousStamp(timeS: Float64Array, start: number): number {
  let row = start;
  while (row > 0 && timeS[row] === timeS[start]) row -= 1;
  return timeS[row] ?? 0;
}
