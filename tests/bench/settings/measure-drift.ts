import { drawNormal, seededRandom } from '@pullbook/practice-car';
import { findDrift, type PooledSpread } from '@pullbook/tuning-math';
import { drawHealthyCar } from './healthy-cars.js';
import { quantileOf } from './sorted-quantile.js';

/** How soon drift was found, and how often there was none. */
export interface DriftScore {
  readonly cars: number;
  readonly medianPulls: number;
  readonly p90Pulls: number;
  readonly foundWithin20: number;
  readonly pullsPerFalseAlarm: number;
}

const DRIFT_RATIO = 0.04;
const BASELINE_PULLS = 6;
const RECENT_PULLS = 20;

/** Six pulls of baseline, then twenty of the same or of 4 % more or less; scatter as the practice cars have it. */
export function measureDrift(count: number, knowsScatter: boolean): DriftScore {
  const found: number[] = [];
  let [alarms, quietPulls] = [0, 0];
  for (let seed = 1; seed <= count; seed += 1) {
    const { goal, truth } = drawHealthyCar(seed);
    const random = seededRandom(seed + 950_001);
    const peaks = (meanKpa: number, pulls: number): number[] =>
      Array.from({ length: pulls }, () => meanKpa * (1 + truth.scatterRatio * drawNormal(random)));
    const baselineKpa = peaks(goal.targetKpa, BASELINE_PULLS);
    const pooled: PooledSpread | undefined = knowsScatter
      ? { sd: truth.scatterRatio * goal.targetKpa, degreesOfFreedom: 30 }
      : undefined;
    const quiet = findDrift({ baselineKpa, recentKpa: peaks(goal.targetKpa, RECENT_PULLS), pooled });
    alarms += quiet.isDrifting ? 1 : 0;
    quietPulls += (quiet.firedAt ?? RECENT_PULLS - 1) + 1;
    const shift = 1 + (seed % 2 === 0 ? DRIFT_RATIO : -DRIFT_RATIO);
    const drifted = findDrift({
      baselineKpa,
      recentKpa: peaks(goal.targetKpa * shift, RECENT_PULLS),
      pooled,
    });
    found.push((drifted.firedAt ?? Infinity) + 1);
  }
  return {
    cars: count,
    medianPulls: quantileOf(
      found.map((pulls) => Math.min(pulls, 99)),
      0.5,
    ),
    p90Pulls: quantileOf(
      found.map((pulls) => Math.min(pulls, 99)),
      0.9,
    ),
    foundWithin20: found.filter((pulls) => pulls <= RECENT_PULLS).length / count,
    pullsPerFalseAlarm: alarms === 0 ? Infinity : quietPulls / alarms,
  };
}
