import { requireSeries } from '../require-series.js';
import type { ChartPoint } from './ewma-chart.js';

/** d2 for moving ranges of two, 2/√π, printed 1.128. */
const MEAN_RANGE_FACTOR = 1.128;
const SIGMAS = 3;

/** A Shewhart chart of single values. */
export interface IndividualsChart {
  readonly centre: number;
  readonly meanMovingRange: number;
  readonly low: number;
  readonly high: number;
  readonly points: readonly ChartPoint[];
}

/**
 * Shewhart chart of single values with limits from their moving ranges: for values of which the spread is
 * not known from elsewhere.
 *
 * @param values at least 2 finite values in order of time
 * @throws TooFewPointsError, NotFiniteError
 * Source: NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.2; limits 3 · mean moving range / 1.128.
 */
export function individualsChart(values: ArrayLike<number>): IndividualsChart {
  requireSeries('individualsChart', 'values', values, 2);
  const list = Array.from(values);
  const centre = list.reduce((sum, value) => sum + value, 0) / list.length;
  const ranges = list.slice(1).map((value, index) => Math.abs(value - (list[index] ?? value)));
  const meanMovingRange = ranges.reduce((sum, range) => sum + range, 0) / ranges.length;
  const reach = (SIGMAS * meanMovingRange) / MEAN_RANGE_FACTOR;
  const [low, high] = [centre - reach, centre + reach];
  const points = list.map((plotted) => ({ plotted, low, high, isOut: plotted < low || plotted > high }));
  return { centre, meanMovingRange, low, high, points };
}
