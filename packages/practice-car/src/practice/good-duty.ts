import type { BoostGoal, DutyController } from '@pullbook/tuning-math';

const GRID_SLACK = 1e-9;

/**
 * Lowest setting whose mean is inside the tolerance; null where there is none.
 *
 * @param meanKpa mean peak at a duty, kPa gauge, never falling as duty rises
 */
export function lowestGoodDuty(
  meanKpa: (duty: number) => number,
  { dutyMin, dutyMax, dutyStep }: DutyController,
  { targetKpa, toleranceKpa }: BoostGoal,
): number | null {
  for (let step = 0; dutyMin + step * dutyStep <= dutyMax + GRID_SLACK; step += 1) {
    const duty = dutyMin + step * dutyStep;
    if (Math.abs(meanKpa(duty) - targetKpa) <= toleranceKpa) return duty;
  }
  return null;
}

/** Whether any setting makes the target. */
export function hasGoodDuty(
  meanKpa: (duty: number) => number,
  controller: DutyController,
  goal: BoostGoal,
): boolean {
  return lowestGoodDuty(meanKpa, controller, goal) !== null;
}
