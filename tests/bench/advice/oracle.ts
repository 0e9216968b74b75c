import { dutyGrid } from '@pullbook/tuning-math';
import type { ShapeCar } from '@pullbook/practice-car';
import { STEP_LIMIT } from './tune-car.js';

/** Lowest setting whose cold mean is inside the tolerance; null where there is none. */
export function lowestGoodDuty({ controller, goal, truth }: ShapeCar): number | null {
  const isGood = (duty: number): boolean =>
    Math.abs(truth.meanKpa(duty) - goal.targetKpa) <= goal.toleranceKpa;
  return dutyGrid(controller).find(isGood) ?? null;
}

/** Pulls of one who knows the curve, keeps the step rule and makes one confirming pull. */
export function oraclePulls(car: ShapeCar, firstDuty: number): number {
  const good = lowestGoodDuty(car) ?? car.controller.dutyMax;
  return Math.max(Math.ceil((good - firstDuty) / STEP_LIMIT), 0) + 1;
}
