import { firstIndexFrom, partOf, type Series } from '../filter/series.js';

/** Settled boost and the stretch that it is the mean of. */
export interface SettledBoostMean {
  readonly settledKpa: number;
  readonly fromS: number;
  readonly toS: number;
  readonly sampleCount: number;
}

const REACHED_SHARE = 0.9;
const LEAST_WINDOW_S = 0.25;
const LEAST_SAMPLES = 3;

/**
 * Settled boost: the mean over up to `windowS` from the moment after which boost stays inside a band
 * about the straight line through its later half, counted from where 90 % of the peak is first reached.
 * Neither the overshoot nor a long taper towards the rev limit is in it.
 *
 * @param boost filtered boost of the pull, kPa gauge
 * @param peakKpa its highest
 * @param bandKpa half width of the band at a level, kPa
 * @param windowS longest stretch that the mean is taken over
 * @returns null where boost does not settle before the pull ends
 * Source: 'settling' in the words of IEEE 181; the band about a line is ours (docs/logs.md).
 */
export function measureSettled(
  boost: Series,
  peakKpa: number,
  bandKpa: (levelKpa: number) => number,
  windowS: number,
): SettledBoostMean | null {
  const { timeS, values } = boost;
  const reached = values.findIndex((value) => value >= REACHED_SHARE * peakKpa);
  const last = values.length - 1;
  if (reached < 0 || last - reached < LEAST_SAMPLES) return null;
  const middleS = ((timeS[reached] as number) + (timeS[last] as number)) / 2;
  const middle = firstIndexFrom(timeS, middleS);
  const line = lineThrough({ timeS: timeS.subarray(middle), values: values.subarray(middle) });
  let from = middle;
  while (from > reached) {
    const expected = line(timeS[from - 1] as number);
    if (Math.abs((values[from - 1] as number) - expected) > bandKpa(expected)) break;
    from -= 1;
  }
  const fromS = timeS[from] as number;
  const window = partOf(boost, fromS, Math.min(fromS + windowS, timeS[last] as number));
  const toS = window.timeS.at(-1) ?? fromS;
  if (toS - fromS < LEAST_WINDOW_S || window.values.length < LEAST_SAMPLES) return null;
  return { settledKpa: meanOverTime(window), fromS, toS, sampleCount: window.values.length };
}

/** Mean by trapezoids, so that uneven sampling does not weigh. */
function meanOverTime({ timeS, values }: Series): number {
  let area = 0;
  for (let index = 1; index < values.length; index += 1) {
    const step = (timeS[index] as number) - (timeS[index - 1] as number);
    area += (step * ((values[index] as number) + (values[index - 1] as number))) / 2;
  }
  return area / ((timeS.at(-1) ?? 0) - (timeS[0] ?? 0));
}

/** Least-squares line of a series as a function of time. */
export function lineThrough({ timeS, values }: Series): (atS: number) => number {
  const count = values.length;
  const meanS = timeS.reduce((sum, time) => sum + time, 0) / count;
  const mean = values.reduce((sum, value) => sum + value, 0) / count;
  let cross = 0;
  let square = 0;
  for (let index = 0; index < count; index += 1) {
    const away = (timeS[index] as number) - meanS;
    cross += away * ((values[index] as number) - mean);
    square += away * away;
  }
  const slope = square > 0 ? cross / square : 0;
  return (atS) => mean + slope * (atS - meanS);
}
