import type { Preset } from '@pullbook/contracts';
import type { PersonsUnits } from '../units/units-of';

/** A goal as far as it is typed; null where that is no pressure yet. */
export interface TypedGoal {
  /** Slot that the preset has or is to take: whatever stands there is this preset, or is replaced by it. */
  readonly slot: number;
  readonly targetKpa: number | null;
  readonly toleranceKpa: number | null;
}

type OtherPreset = Pick<Preset, 'slot' | 'name' | 'state' | 'targetKpa' | 'toleranceKpa'>;

/**
 * The preset of another slot that a car would make along with this one: one target lies inside the other's tolerance.
 * Common practice, no source.
 *
 * @returns the one with the nearest target; null where none is that near
 */
export function findNearTarget<P extends OtherPreset>(goal: TypedGoal, presets: readonly P[]): P | null {
  const { slot, targetKpa } = goal;
  if (targetKpa === null) return null;
  const apartKpa = (one: P) => Math.abs((one.targetKpa ?? Infinity) - targetKpa);
  const near = presets
    .filter((one) => one.state !== 'replaced' && one.slot !== slot)
    .filter((one) => apartKpa(one) <= Math.max(one.toleranceKpa, goal.toleranceKpa ?? 0));
  return near.reduce<P | null>(
    (nearest, one) => (nearest === null || apartKpa(one) < apartKpa(nearest) ? one : nearest),
    null,
  );
}

/** A hint, not a refusal: two presets may be meant to make the same boost. Empty where there is nothing to hint at. */
export function sayNearTarget(
  goal: TypedGoal,
  presets: readonly OtherPreset[],
  units: Pick<PersonsUnits, 'write' | 'figure'>,
): string {
  const near = findNearTarget(goal, presets);
  if (near === null || near.targetKpa === null) return '';
  const target = `${units.write(near.targetKpa)} ± ${units.figure(near.toleranceKpa)}`;
  return `Preset ${near.slot} ${near.name} has much the same target, ${target}: a car that makes one makes the other. Where they differ in something else, such as fuel or gate hold, both may be meant; otherwise one will do.`;
}
