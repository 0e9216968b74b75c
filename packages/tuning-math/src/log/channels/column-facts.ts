/** What a column of samples looks like; NaN throughout for a column without samples. */
export interface ColumnFacts {
  readonly sampleCount: number;
  readonly lowest: number;
  readonly highest: number;
  /** 0.5 %, 50 % and 99.5 % points: what a few wild samples do not move. */
  readonly low: number;
  readonly middle: number;
  readonly high: number;
}

const MAX_SORTED = 20_000;

/** Count, extremes and robust extremes of a column; NaN marks missing samples. Cost: O(n). */
export function columnFacts(values: Float32Array | Float64Array): ColumnFacts {
  let sampleCount = 0;
  let lowest = Infinity;
  let highest = -Infinity;
  for (let row = 0; row < values.length; row += 1) {
    const value = values[row] as number;
    if (Number.isNaN(value)) continue;
    sampleCount += 1;
    if (value < lowest) lowest = value;
    if (value > highest) highest = value;
  }
  if (sampleCount === 0) return { sampleCount, lowest: NaN, highest: NaN, low: NaN, middle: NaN, high: NaN };
  const sorted = sortedSample(values);
  const at = (share: number): number => sorted[Math.floor(share * (sorted.length - 1))] ?? lowest;
  return { sampleCount, lowest, highest, low: at(0.005), middle: at(0.5), high: at(0.995) };
}

function sortedSample(values: Float32Array | Float64Array): Float64Array {
  const stride = Math.max(1, Math.ceil(values.length / MAX_SORTED));
  const some: number[] = [];
  for (let row = 0; row < values.length; row += stride) {
    const value = values[row] as number;
    if (!Number.isNaN(value)) some.push(value);
  }
  return Float64Array.from(some).sort();
}
