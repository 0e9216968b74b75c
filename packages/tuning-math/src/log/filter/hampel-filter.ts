import { OutOfRangeError } from '../../errors.js';
import { requireNumber } from '../../require-number.js';
import { requireSameLength, requireSeries, requireStrictlyIncreasing } from '../../require-series.js';
import { firstIndexFrom, type Series } from './series.js';

/** How wide the Hampel identifier looks and what it calls a spike. */
export interface HampelOptions {
  /** Samples within this time on either side belong to the window, s. */
  readonly halfWindowS: number;
  /** At least so many samples on either side, where there are any. */
  readonly leastSideSamples: number;
  /** Distance from the median, in scaled median absolute deviations, from which a sample is a spike. */
  readonly threshold: number;
  /** A sample nearer to the median than this is never a spike, in the unit of the values. */
  readonly leastDistance: number;
}

/** Values with the spikes replaced by the median about them, and which they were. */
export interface HampelResult {
  readonly values: Float64Array;
  readonly spikeIndexes: readonly number[];
}

/** 1/Φ⁻¹(3/4): makes the median absolute deviation of normal noise its standard deviation. */
const MAD_SCALE = 1.482602218505602;

/**
 * Hampel identifier: a sample further than `threshold` scaled MADs from the median of its window is
 * replaced by that median. Leaves ramps alone, since a ramp's middle sample is its median.
 *
 * @param series finite values, times in s rising strictly
 * @throws NotFiniteError, TooFewPointsError (empty), LengthMismatchError, NotStrictlyIncreasingError, OutOfRangeError
 * Cost: O(n·w log w) for windows of w samples.
 * Source: Davies & Gather, JASA 88 (1993) 782-792; MAD scale of the normal law.
 */
export function hampelFilter(series: Series, options: HampelOptions): HampelResult {
  const { timeS, values } = series;
  requireSeries('hampelFilter', 'values', values);
  requireSeries('hampelFilter', 'timeS', timeS);
  requireSameLength('hampelFilter', 'timeS', timeS, values.length);
  requireStrictlyIncreasing('hampelFilter', 'timeS', timeS);
  requireNumber('hampelFilter', 'threshold', options.threshold, { min: 0 });
  if (!(options.halfWindowS >= 0)) {
    throw new OutOfRangeError('hampelFilter', {
      argument: 'halfWindowS',
      value: options.halfWindowS,
      allowed: 'to be 0 or more',
    });
  }
  const cleaned = Float64Array.from(values);
  const spikeIndexes: number[] = [];
  for (let index = 0; index < values.length; index += 1) {
    const { middle, deviation } = windowMedian(series, index, options);
    const distance = Math.abs((values[index] as number) - middle);
    if (distance <= options.threshold * MAD_SCALE * deviation || distance <= options.leastDistance) continue;
    cleaned[index] = middle;
    spikeIndexes.push(index);
  }
  return { values: cleaned, spikeIndexes };
}

function windowMedian(
  { timeS, values }: Series,
  index: number,
  { halfWindowS, leastSideSamples }: HampelOptions,
): { middle: number; deviation: number } {
  const time = timeS[index] as number;
  const start = Math.max(0, Math.min(index - leastSideSamples, firstIndexFrom(timeS, time - halfWindowS)));
  const end = Math.min(
    values.length,
    Math.max(index + leastSideSamples + 1, firstIndexFrom(timeS, time + halfWindowS)),
  );
  const window = values.slice(start, end);
  const middle = median(window);
  const deviation = median(window.map((value) => Math.abs(value - middle)));
  return { middle, deviation };
}

/** Median of a list; sorts it in place. NaN for an empty one. */
export function median(values: Float64Array): number {
  values.sort();
  const half = values.length >> 1;
  const upper = values[half] ?? NaN;
  return values.length % 2 === 1 ? upper : ((values[half - 1] ?? NaN) + upper) / 2;
}
