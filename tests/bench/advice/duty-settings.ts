import type { DutyController } from '@pullbook/tuning-math';

/** Every setting of a controller, lowest first. */
export function dutySettings({ dutyMin, dutyMax, dutyStep }: DutyController): number[] {
  const steps = Math.floor((dutyMax - dutyMin) / dutyStep + 1e-9);
  return Array.from({ length: steps + 1 }, (_, step) => dutyMin + step * dutyStep);
}
