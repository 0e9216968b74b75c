import { meanAndVariance } from '../numerics/mean-and-variance.js';
import { studentTQuantile } from '../numerics/student-t-quantile.js';
import { requireNumber } from '../require-number.js';
import { requireSeries } from '../require-series.js';
import type { PooledSpread } from '../statistics/tolerance-interval.js';
import { ewmaSpread, type ChartPoint } from './ewma-chart.js';

/** Peaks before and since, at reference conditions, usable pulls only. */
export interface DriftRequest {
  /** Peaks that proved the preset, kPa; at least 2. */
  readonly baselineKpa: ArrayLike<number>;
  /** Peaks since, kPa, in order of time. */
  readonly recentKpa: ArrayLike<number>;
  /** The workshop's own repeatability; without it, common practice (1.4 % of peak) counts as 6 pulls. */
  readonly pooled?: PooledSpread | undefined;
}

/** Which rule told drift from scatter. */
export type DriftRule = 'shewhart-single-pull' | 'ewma-moving-average';

/** The answer of `findDrift`. */
export interface Drift {
  readonly isDrifting: boolean;
  /** Rule that fired first; null without drift. */
  readonly rule: DriftRule | null;
  /** Position in `recentKpa` at which it fired. */
  readonly firedAt: number | null;
  /** Latest moving average against the baseline, %; 0 without recent pulls. */
  readonly driftPct: number;
  readonly centreKpa: number;
  readonly sdKpa: number;
  readonly singles: readonly ChartPoint[];
  readonly averages: readonly ChartPoint[];
}

/** Two-sided chance of a single pull beyond its limits, by scatter alone. */
const SINGLE_ALARM_CHANCE = 0.0013;
/** The same for each moving average; averages hang together, so that false alarms come in fewer runs. */
const AVERAGE_ALARM_CHANCE = 0.0027;
const NEWEST_WEIGHT = 0.35;
/** Scatter of single pulls by common practice, share of peak, and for how many pulls it counts. */
export const COMMON_SCATTER_RATIO = 0.014;
export const COMMON_SCATTER_PULLS = 6;

/**
 * Whether a preset's peaks have drifted since it was proven, by two charts at once: single pulls (Shewhart)
 * for a jump, their moving average (EWMA) for a creep. Limits allow for the baseline being few pulls.
 *
 * @returns whether, by which rule, at which pull, how far; both charts for drawing
 * @throws TooFewPointsError, NotFiniteError, OutOfRangeError
 * Source: NIST/SEMATECH e-Handbook 6.3.2; limits by Student's t with the baseline's uncertainty added, as
 * for a prediction interval; chances chosen for at most one false alarm in 370 pulls, measured by
 * simulation in the tests.
 */
export function findDrift({ baselineKpa, recentKpa, pooled }: DriftRequest): Drift {
  requireSeries('findDrift', 'baselineKpa', baselineKpa, 2);
  requireSeries('findDrift', 'recentKpa', recentKpa, 0);
  const { centreKpa, sdKpa, degreesOfFreedom } = baselineSpread(baselineKpa, pooled);
  const ofMean = 1 / baselineKpa.length;
  const singleReach = reachOf(SINGLE_ALARM_CHANCE, degreesOfFreedom) * sdKpa * Math.sqrt(1 + ofMean);
  const singles = Array.from(recentKpa, (value) => point(value, centreKpa, singleReach));
  let average = centreKpa;
  const averages = Array.from(recentKpa, (value, index) => {
    average = NEWEST_WEIGHT * value + (1 - NEWEST_WEIGHT) * average;
    const builtUp = 1 - (1 - NEWEST_WEIGHT) ** (index + 1);
    const spread = Math.sqrt(ewmaSpread(NEWEST_WEIGHT, index + 1) ** 2 + builtUp ** 2 * ofMean);
    return point(average, centreKpa, reachOf(AVERAGE_ALARM_CHANCE, degreesOfFreedom) * sdKpa * spread);
  });
  return {
    ...firstAlarm(singles, averages),
    driftPct: driftOf(average, centreKpa, recentKpa.length),
    centreKpa,
    sdKpa,
    singles,
    averages,
  };
}

function firstAlarm(
  singles: readonly ChartPoint[],
  averages: readonly ChartPoint[],
): Pick<Drift, 'isDrifting' | 'rule' | 'firedAt'> {
  const index = singles.findIndex((single, at) => single.isOut || averages[at]?.isOut === true);
  if (index === -1) return { isDrifting: false, rule: null, firedAt: null };
  const rule = singles[index]?.isOut === true ? 'shewhart-single-pull' : 'ewma-moving-average';
  return { isDrifting: true, rule, firedAt: index };
}

/** The average starts at the baseline, so a short run shows only part of a shift: that part is made good. */
function driftOf(average: number, centreKpa: number, count: number): number {
  if (count === 0) return 0;
  const builtUp = 1 - (1 - NEWEST_WEIGHT) ** count;
  return (100 * (average - centreKpa)) / builtUp / centreKpa;
}

function baselineSpread(
  baselineKpa: ArrayLike<number>,
  pooled: PooledSpread | undefined,
): { centreKpa: number; sdKpa: number; degreesOfFreedom: number } {
  const own = meanAndVariance(baselineKpa);
  requireNumber('findDrift', 'mean of baselineKpa', own.mean, { min: 0, exclusive: true });
  const prior = pooled ?? { sd: COMMON_SCATTER_RATIO * own.mean, degreesOfFreedom: COMMON_SCATTER_PULLS };
  requireNumber('findDrift', 'pooled.sd', prior.sd, { min: 0, exclusive: true });
  requireNumber('findDrift', 'pooled.degreesOfFreedom', prior.degreesOfFreedom, { min: 1 });
  const degreesOfFreedom = own.count - 1 + prior.degreesOfFreedom;
  const squares = (own.count - 1) * (own.variance ?? 0) + prior.degreesOfFreedom * prior.sd ** 2;
  return { centreKpa: own.mean, sdKpa: Math.sqrt(squares / degreesOfFreedom), degreesOfFreedom };
}

function reachOf(chance: number, degreesOfFreedom: number): number {
  return studentTQuantile(1 - chance / 2, degreesOfFreedom);
}

function point(plotted: number, centre: number, reach: number): ChartPoint {
  return { plotted, low: centre - reach, high: centre + reach, isOut: Math.abs(plotted - centre) > reach };
}
