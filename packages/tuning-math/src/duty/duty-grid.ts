import type { DutyController } from './duty-advice-types.js';

const SLACK = 1e-9;

/** Every setting of a controller, rising from `dutyMin`; rounded so that 0.1 steps stay 0.1 steps. */
export function dutyGrid({ dutyMin, dutyMax, dutyStep }: DutyController): number[] {
  const steps = Math.floor((dutyMax - dutyMin) / dutyStep + SLACK);
  return Array.from({ length: steps + 1 }, (_, step) => Math.round((dutyMin + step * dutyStep) * 1e9) / 1e9);
}

/** Highest setting at or below a duty; the lowest setting if there is none. */
export function settingAtOrBelow(grid: readonly number[], duty: number): number {
  let found = grid[0] ?? 0;
  for (const setting of grid) if (setting <= duty + SLACK) found = setting;
  return found;
}

/** Whether two duties are the same setting. */
export function sameDuty(one: number, other: number): boolean {
  return Math.abs(one - other) < 1e-6;
}
