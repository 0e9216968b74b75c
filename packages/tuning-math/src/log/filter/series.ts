/** Samples of one channel with their own times; no missing values, times rise strictly. */
export interface Series {
  readonly timeS: Float64Array;
  readonly values: Float64Array;
}

/** First index whose value is not below `bound` in a rising list; its length where none is. O(log n). */
export function firstIndexFrom(rising: ArrayLike<number>, bound: number): number {
  let low = 0;
  let high = rising.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((rising[middle] as number) < bound) low = middle + 1;
    else high = middle;
  }
  return low;
}

/**
 * One channel's samples from `fromS` to `toS`, both included, missing ones dropped. Columns are kept in
 * single precision; seven digits bring back the decimal that was logged.
 */
export function cutSeries(
  timeS: Float64Array,
  column: Float32Array | undefined,
  fromS: number,
  toS: number,
): Series {
  const times: number[] = [];
  const values: number[] = [];
  const end = column === undefined ? 0 : timeS.length;
  for (let row = firstIndexFrom(timeS, fromS); row < end && (timeS[row] as number) <= toS; row += 1) {
    const value = column?.[row] ?? NaN;
    if (Number.isNaN(value)) continue;
    times.push(timeS[row] as number);
    values.push(sevenDigits(value));
  }
  return { timeS: Float64Array.from(times), values: Float64Array.from(values) };
}

/** Part of a series from `fromS` to `toS`, both included. */
export function partOf(series: Series, fromS: number, toS: number): Series {
  const start = firstIndexFrom(series.timeS, fromS);
  let end = firstIndexFrom(series.timeS, toS);
  if (series.timeS[end] === toS) end += 1;
  return { timeS: series.timeS.subarray(start, end), values: series.values.subarray(start, end) };
}

/** Value at a time, linear between samples; null outside the series. O(log n). */
export function valueAt(series: Series, timeS: number): number | null {
  const { timeS: times, values } = series;
  const after = firstIndexFrom(times, timeS);
  if (after === times.length) return null;
  const timeAfter = times[after] as number;
  if (timeAfter === timeS) return values[after] as number;
  if (after === 0) return null;
  const timeBefore = times[after - 1] as number;
  const share = (timeS - timeBefore) / (timeAfter - timeBefore);
  return (values[after - 1] as number) + share * ((values[after] as number) - (values[after - 1] as number));
}

/** Nearest number of about seven digits, the precision of a single. */
function sevenDigits(value: number): number {
  const size = Math.abs(value);
  const scale = size < 10 ? 1e6 : size < 100 ? 1e5 : size < 1000 ? 1e4 : size < 10_000 ? 1e3 : 1e2;
  return size < 1e6 ? Math.round(value * scale) / scale : value;
}

/** The samples at which a held or frozen channel changes: only then is its value known to be of that moment. */
export function freshSamples({ timeS, values }: Series): Series {
  const fresh = [...values.keys()].filter((index) => index > 0 && values[index] !== values[index - 1]);
  return {
    timeS: Float64Array.from(fresh, (index) => timeS[index] as number),
    values: Float64Array.from(fresh, (index) => values[index] as number),
  };
}
