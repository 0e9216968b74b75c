import type { PresetRecord } from '../presets/load-presets.js';
import { ceilingOfCar, sayLimit } from '../engine/ceiling-of-car.js';
import type { SessionRecord } from '../tuning-sessions/load-session.js';

/** What keeps any pull of a preset from being driven in a tuning session, in plain words; empty where nothing does. */
export function missingBeforePull(
  { car, values, isReplaced }: PresetRecord,
  session: SessionRecord,
): string[] {
  const allowed = ceilingOfCar(car);
  const { ceilingKpa } = values;
  const isTooHigh = allowed !== null && ceilingKpa !== null && ceilingKpa > allowed.ceilingKpa;
  return [
    ...(session.visit.isOpen ? [] : ['this visit is closed']),
    ...(isReplaced ? ['a newer preset took the slot of this one'] : []),
    ...(isTooHigh ? [`lower the ceiling: it stands above the car's ${sayLimit(allowed.binds)}`] : []),
    ...(session.readiness.passed ? [] : ['pass the readiness check', ...session.readiness.missing]),
  ];
}
