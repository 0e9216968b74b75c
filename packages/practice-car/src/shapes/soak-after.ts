import type { ShapeTruth } from './shape-car.js';

/**
 * Factor on the cold mean of the next pull by the heat of those before it.
 *
 * @param pullsBefore 0 for a cold car
 */
export function soakAfter(
  { soakShiftRatio, soakPulls }: Pick<ShapeTruth, 'soakShiftRatio' | 'soakPulls'>,
  pullsBefore: number,
): number {
  return 1 + soakShiftRatio * (1 - Math.exp(-Math.max(pullsBefore, 0) / soakPulls));
}
