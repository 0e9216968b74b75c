import type { BoostGoal, DutyController } from '@pullbook/tuning-math';
import { drawBetween } from '../random/draw-between.js';
import { drawOne } from '../random/draw-one.js';
import type { Random } from '../random/seeded-random.js';
import { STARTS_BELOW, TARGET_ABOVE_MIN, TARGET_BELOW_MAX, TARGET_GAINS } from './drawn-ranges.js';
import type { MeanPeakKpa, ResponseShape } from './shape-car.js';

/** What is wanted of a car, and the controller it is to be had with. */
export interface DrawnGoal {
  readonly controller: DutyController;
  readonly goal: BoostGoal;
  /** A duty that makes the target; the end of the range where none does. */
  readonly goodDuty: number;
}

/** A car on which to set a goal. */
export interface GoalGround {
  readonly meanKpa: MeanPeakKpa;
  readonly kind: ResponseShape['kind'];
  readonly baseKpa: number;
}

/** A setting must make the target within this share of the tolerance, or the controller is too coarse for the car. */
const GRID_SHARE = 0.7;

/** A target, tolerance and ceiling for this car by its kind; null if this draw gives none. */
export function drawGoal(random: Random, ground: GoalGround): DrawnGoal | null {
  const controller = drawController(random);
  const targetKpa = drawTargetKpa(random, ground, controller);
  const goal: BoostGoal = {
    targetKpa,
    toleranceKpa: targetKpa * drawBetween(random, 0.02, 0.03),
    ceilingKpa: targetKpa * drawBetween(random, 1.06, 1.12),
  };
  const goodDuty = nearestDuty(ground.meanKpa, controller, targetKpa);
  return fits(ground, goal, goodDuty) ? { controller, goal, goodDuty } : null;
}

function drawController(random: Random): DutyController {
  const dutyMin = drawOne(random, [0, 0, 0, 5, 10]);
  const dutyMax = drawOne(random, [100, 100, 95, 90]);
  return { dutyMin, dutyMax, dutyStep: drawOne(random, [0.5, 1, 1, 1]) };
}

function drawTargetKpa(random: Random, { meanKpa, kind }: GoalGround, range: DutyController): number {
  const { dutyMin, dutyMax } = range;
  if (kind === 'out-of-reach') return meanKpa(dutyMax) * drawBetween(random, 1.06, 1.4);
  if (kind === 'floor-over-target') return meanKpa(dutyMin) * drawBetween(random, 0.8, 0.94);
  return meanKpa(drawBetween(random, dutyMin + TARGET_ABOVE_MIN, dutyMax - TARGET_BELOW_MAX));
}

function nearestDuty(
  meanKpa: MeanPeakKpa,
  { dutyMin, dutyMax, dutyStep }: DutyController,
  targetKpa: number,
): number {
  let best = dutyMin;
  for (let duty = dutyMin; duty <= dutyMax; duty += dutyStep) {
    if (Math.abs(meanKpa(duty) - targetKpa) < Math.abs(meanKpa(best) - targetKpa)) best = duty;
  }
  return best;
}

function fits({ meanKpa, kind, baseKpa }: GoalGround, goal: BoostGoal, goodDuty: number): boolean {
  const gain = goal.targetKpa / baseKpa;
  if (kind === 'floor-over-target') return gain > 0.7;
  if (gain < TARGET_GAINS[0] || gain > TARGET_GAINS[1]) return false;
  if (kind === 'out-of-reach') return true;
  const miss = Math.abs(meanKpa(goodDuty) - goal.targetKpa);
  const startsBelow = meanKpa(0) < STARTS_BELOW * goal.targetKpa;
  return miss < GRID_SHARE * goal.toleranceKpa && startsBelow;
}
