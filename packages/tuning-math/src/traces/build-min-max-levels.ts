import { LEVEL_FACTOR, levelShapes } from './level-shapes.js';

/** Lowest and highest sample of each bin of one level; NaN where a bin holds no sample. */
export interface MinMaxLevel {
  readonly rowsPerBin: number;
  readonly lows: Float32Array;
  readonly highs: Float32Array;
}

/**
 * The levels of a pyramid above the samples, finest first: whatever is drawn from them at whatever width, no extreme
 * is ever lost.
 *
 * @param values samples of one channel in the order of the rows; NaN where a row has none
 * @returns as many levels as `levelShapes` has above its first
 * Cost: O(n). Source: common practice for long line charts, no source.
 */
export function buildMinMaxLevels(values: Float32Array): MinMaxLevel[] {
  const levels: MinMaxLevel[] = [];
  let below = { lows: values, highs: values };
  for (const { rowsPerBin, binCount } of levelShapes(values.length).slice(1)) {
    below = { lows: merge(below.lows, binCount, lower), highs: merge(below.highs, binCount, higher) };
    levels.push({ rowsPerBin, ...below });
  }
  return levels;
}

const lower = (one: number, other: number): boolean => one < other;
const higher = (one: number, other: number): boolean => one > other;

function merge(
  below: Float32Array,
  binCount: number,
  wins: (one: number, other: number) => boolean,
): Float32Array {
  const bins = new Float32Array(binCount);
  for (let bin = 0; bin < binCount; bin += 1) {
    const end = Math.min(below.length, (bin + 1) * LEVEL_FACTOR);
    let best = NaN;
    for (let index = bin * LEVEL_FACTOR; index < end; index += 1) {
      const value = below[index] as number;
      if (wins(value, best) || (Number.isNaN(best) && !Number.isNaN(value))) best = value;
    }
    bins[bin] = best;
  }
  return bins;
}
