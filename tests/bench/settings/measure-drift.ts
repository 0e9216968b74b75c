import { drawNormal, seededRandom } from '@pullbook/practice-car';
import { findDrift, type PooledSpread } from '@pullbook/tuning-math';
import { drawHealthyCar } from './healthy-cars.js';
import { quantileOf } from './sorted-quantile.js';

/** How the alarm did on one car. */
export interface DriftRow {
  /** Pulls until a drift was found; 99 where twenty did not show it. */
  readonly foundAfter: number;
  /** Pulls without drift until the first false alarm, or all of them. */
  readonly quietPulls: number;
  readonly isFalseAlarm: boolean;
}

const DRIFT_RATIO = 0.04;
const BASELINE_PULLS = 6;
const RECENT_PULLS = 20;

const NOT_FOUND = 99;

/** Six pulls of baseline, then twenty of the same or of 4 % more or less; scatter as the practice cars have it. */
export function measureDrift(seed: number, knowsScatter: boolean): DriftRow {
  const { goal, truth } = drawHealthyCar(seed);
  const random = seededRandom(seed + 950_001);
  const peaks = (meanKpa: number, pulls: number): number[] =>
    Array.from({ length: pulls }, () => meanKpa * (1 + truth.scatterRatio * drawNormal(random)));
  const baselineKpa = peaks(goal.targetKpa, BASELINE_PULLS);
  const pooled: PooledSpread | undefined = knowsScatter
    ? { sd: truth.scatterRatio * goal.targetKpa, degreesOfFreedom: 30 }
    : undefined;
  const quiet = findDrift({ baselineKpa, recentKpa: peaks(goal.targetKpa, RECENT_PULLS), pooled });
  const shift = 1 + (seed % 2 === 0 ? DRIFT_RATIO : -DRIFT_RATIO);
  const recentKpa = peaks(goal.targetKpa * shift, RECENT_PULLS);
  const drifted = findDrift({ baselineKpa, recentKpa, pooled });
  return {
    foundAfter: drifted.firedAt === null ? NOT_FOUND : drifted.firedAt + 1,
    quietPulls: (quiet.firedAt ?? RECENT_PULLS - 1) + 1,
    isFalseAlarm: quiet.isDrifting,
  };
}

/** The rows of all cars as figures. */
export function scoreDrift(rows: readonly DriftRow[]): {
  readonly cars: number;
  readonly medianPulls: number;
  readonly p90Pulls: number;
  readonly foundWithin20: number;
  readonly pullsPerFalseAlarm: number;
} {
  const found = rows.map((row) => row.foundAfter);
  const alarms = rows.filter((row) => row.isFalseAlarm).length;
  const quietPulls = rows.reduce((sum, row) => sum + row.quietPulls, 0);
  return {
    cars: rows.length,
    medianPulls: quantileOf(found, 0.5),
    p90Pulls: quantileOf(found, 0.9),
    foundWithin20: found.filter((pulls) => pulls <= RECENT_PULLS).length / rows.length,
    pullsPerFalseAlarm: alarms === 0 ? Infinity : quietPulls / alarms,
  };
}
