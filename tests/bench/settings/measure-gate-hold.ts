import { adviseGateHold, normalCdf, type HoldPull } from '@pullbook/tuning-math';
import { drawHoldCar, type HoldCar } from './hold-car.js';
import { quantileOf } from './sorted-quantile.js';

/** How the gate-hold search did over many cars. */
export interface HoldScore {
  readonly cars: number;
  readonly found: number;
  readonly withinThreePoints: number;
  readonly medianMissPoints: number;
  readonly medianPulls: number;
  readonly p90Pulls: number;
  readonly carsPastCeiling: number;
  readonly overLimitByMoreThanThree: number;
}

const MOST_PULLS = 20;
const RISK_LIMIT = 0.02;

interface HoldRun {
  readonly foundPct: number | null;
  readonly pulls: readonly HoldPull[];
}

/** Runs the search on `count` cars and scores it against the best hold that each car's truth allows. */
export function measureGateHold(count: number): HoldScore {
  const misses: number[] = [];
  const pullCounts: number[] = [];
  let pastCeiling = 0;
  for (let seed = 1; seed <= count; seed += 1) {
    const car = drawHoldCar(seed);
    const run = searchHold(car);
    if (run.pulls.some((pull) => pull.peakKpa > car.goal.ceilingKpa)) pastCeiling += 1;
    if (run.foundPct === null) continue;
    misses.push(bestHold(car) - run.foundPct);
    // The first pull is the one that the duty was found with.
    pullCounts.push(run.pulls.length - 1);
  }
  return {
    cars: count,
    found: misses.length,
    withinThreePoints: misses.filter((miss) => Math.abs(miss) <= 3).length / misses.length,
    medianMissPoints: quantileOf(misses, 0.5),
    medianPulls: quantileOf(pullCounts, 0.5),
    p90Pulls: quantileOf(pullCounts, 0.9),
    carsPastCeiling: pastCeiling,
    overLimitByMoreThanThree: misses.filter((miss) => miss < -3).length / misses.length,
  };
}

function searchHold(car: HoldCar): HoldRun {
  const pulls = [car.pull(0, car.startHoldPct)];
  while (pulls.length <= MOST_PULLS) {
    const controller = { holdMin: 0, holdMax: 100, holdStep: 1 };
    const advice = adviseGateHold({ controller, goal: car.goal, riskLimit: RISK_LIMIT, pulls });
    if (advice.provedBy.length > 0) return { foundPct: advice.holdPct, pulls };
    if (advice.holdPct === null) return { foundPct: null, pulls };
    pulls.push(car.pull(pulls.length, advice.holdPct));
  }
  return { foundPct: null, pulls };
}

/** Highest hold whose true mean overshoot keeps the limit and whose true chance of passing the ceiling the risk. */
function bestHold(car: HoldCar): number {
  let best = 0;
  for (let hold = 0; hold <= 100; hold += 1) {
    const overshoot = car.meanOvershootPct(hold);
    const meanPeakKpa = car.settledKpa * (1 + overshoot / 100);
    const risk = normalCdf((meanPeakKpa - car.goal.ceilingKpa) / (0.012 * meanPeakKpa));
    if (overshoot > car.goal.overshootLimitPct || risk > RISK_LIMIT) break;
    best = hold;
  }
  return best;
}
