import { requireNumber } from '../require-number.js';
import { requireSeries } from '../require-series.js';

/** Settings of an exponentially weighted moving-average chart. */
export interface EwmaOptions {
  /** Mean while nothing drifts. */
  readonly centre: number;
  /** Standard deviation of single values while nothing drifts, above 0. */
  readonly sd: number;
  /** Weight of the newest value, above 0 up to 1; small finds slow drift. */
  readonly newestWeight: number;
  /** Width of the limits in standard deviations of the average; 3 by common practice. */
  readonly limitSigmas?: number;
  /** `settled` limits are those of a long run; `growing` ones are exact from the first value on. */
  readonly limits?: 'settled' | 'growing';
}

/** One point of the chart. */
export interface ChartPoint {
  /** What the chart plots: the moving average, or the value itself. */
  readonly plotted: number;
  readonly low: number;
  readonly high: number;
  readonly isOut: boolean;
}

/**
 * EWMA chart: a moving average that finds a small lasting shift sooner than single values do.
 *
 * @param values finite, in order of time; none gives no points
 * @returns one point for each value; the average starts from the centre
 * @throws NotFiniteError, OutOfRangeError
 * Source: NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.4.
 */
export function ewmaChart(values: ArrayLike<number>, options: EwmaOptions): ChartPoint[] {
  requireSeries('ewmaChart', 'values', values, 0);
  const { centre, sd, newestWeight, limitSigmas = 3, limits = 'settled' } = options;
  requireNumber('ewmaChart', 'centre', centre);
  requireNumber('ewmaChart', 'sd', sd, { min: 0, exclusive: true });
  requireNumber('ewmaChart', 'newestWeight', newestWeight, { min: 0.001, max: 1 });
  requireNumber('ewmaChart', 'limitSigmas', limitSigmas, { min: 0, max: 10, exclusive: true });
  let plotted = centre;
  return Array.from(values, (value, index) => {
    plotted = newestWeight * value + (1 - newestWeight) * plotted;
    const reach = limitSigmas * sd * ewmaSpread(newestWeight, limits === 'growing' ? index + 1 : Infinity);
    return { plotted, low: centre - reach, high: centre + reach, isOut: Math.abs(plotted - centre) > reach };
  });
}

/** Standard deviation of the average after a number of values, in units of that of a single value. */
export function ewmaSpread(newestWeight: number, count: number): number {
  return Math.sqrt((newestWeight / (2 - newestWeight)) * (1 - (1 - newestWeight) ** (2 * count)));
}
