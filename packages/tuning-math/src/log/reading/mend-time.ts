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
 * Makes time rise strictly. Rows without a time, lone stamps out of line, and rows that repeat the time
 * before them are left out, except where a coarse clock gives many rows one stamp: those are spread evenly
 * until the next stamp. A clock that falls by about a day ran past midnight; any other fall is a new start
 * of the logger, put behind the old one with a gap of a minute, so that no pull can span it.
 *
 * @param timeS seconds as logged; NaN where the row has none. Changed in place and handed back: logs are
 *   long and their times are the largest part of what is kept
 * @param isClock time of day, so that midnight can pass
 * Source: common practice, no source. Cost: O(n).
 */
export function mendTime(timeS: Float64Array, isClock: boolean): MendedTime {
  dropLoneStamps(timeS);
  const restarts = unroll(timeS, isClock);
  if (isCoarse(timeS)) spreadTies(timeS);
  const untimedRows = timeS.reduce((count, time) => count + (Number.isNaN(time) ? 1 : 0), 0);
  const keep = risingRows(timeS);
  return {
    keep,
    timeS: keep === null ? timeS : Float64Array.from(keep, (row) => timeS[row] as number),
    untimedRows,
    repeatedRows: keep === null ? 0 : timeS.length - keep.length - untimedRows,
    restarts,
  };
}

/** Rows whose time lies above all before; null where all do. */
function risingRows(timeS: Float64Array): Uint32Array | null {
  const isRising = (row: number, last: number): boolean => (timeS[row] as number) > last;
  let row = 0;
  let last = -Infinity;
  for (; row < timeS.length && isRising(row, last); row += 1) last = timeS[row] as number;
  if (row === timeS.length) return null;
  const keep = Uint32Array.from({ length: timeS.length }, (_, index) => index);
  let count = row;
  for (; row < timeS.length; row += 1) {
    if (!isRising(row, last)) continue;
    keep[count] = row;
    count += 1;
    last = timeS[row] as number;
  }
  return keep.subarray(0, count);
}

/** A single stamp out of line (garbled digits) is no stamp. */
function dropLoneStamps(timeS: Float64Array): void {
  for (let row = 1; row + 1 < timeS.length; row += 1) {
    const [before, time, after] = [timeS[row - 1] as number, timeS[row] as number, timeS[row + 1] as number];
    if (after > before && (time > after || time < before)) timeS[row] = NaN;
  }
}

const LEAST_FALL_S = 0.5;

/** @returns how often the logger was started again */
function unroll(timeS: Float64Array, isClock: boolean): number {
  let offset = 0;
  let last = NaN;
  let restarts = 0;
  for (let row = 0; row < timeS.length; row += 1) {
    const fall = last - (timeS[row] as number) - offset;
    if (fall > LEAST_FALL_S) {
      const isMidnight = isClock && Math.abs(fall - DAY_S) < DAY_S / 2;
      offset += isMidnight ? DAY_S : fall + RESTART_GAP_S;
      restarts += isMidnight ? 0 : 1;
    }
    timeS[row] = (timeS[row] as number) + offset;
    if (!Number.isNaN(timeS[row])) last = timeS[row] as number;
  }
  return restarts;
}

/** More than half of all rows share the stamp of the row before. */
function isCoarse(timeS: Float64Array): boolean {
  let ties = 0;
  for (let row = 1; row < timeS.length; row += 1) if (timeS[row] === timeS[row - 1]) ties += 1;
  return ties > timeS.length / 2;
}

function spreadTies(timeS: Float64Array): void {
  let start = 0;
  let [stamp, before] = [timeS[0] as number, NaN];
  for (let row = 1; row <= timeS.length; row += 1) {
    const here = timeS[row];
    if (here === stamp) continue;
    // The last stamp has no next one: its rows are as far apart as those of the stamp before it.
    const next = here ?? stamp + (stamp - before || 0);
    for (let tie = start + 1; tie < row; tie += 1) {
      timeS[tie] = stamp + ((next - stamp) * (tie - start)) / (row - start);
    }
    [before, stamp, start] = [stamp, here ?? stamp, row];
  }
}
