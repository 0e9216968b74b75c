import type { PresetRecord } from '../presets/load-presets.js';
import { lowestCarLimit } from '../presets/lowest-car-limit.js';
import type { SessionRecord } from '../tuning-sessions/load-session.js';

/** What keeps any pull of a preset from being driven in a tuning session, in plain words; empty where nothing does. */
export function missingBeforePull(
  { car, values, isReplaced }: PresetRecord,
  session: SessionRecord,
): string[] {
  const lowest = lowestCarLimit(car.limits);
  const { ceilingKpa } = values;
  const isTooHigh = lowest !== null && ceilingKpa !== null && ceilingKpa > lowest.limitKpa;
  return [
    ...(session.visit.isOpen ? [] : ['this visit is closed']),
    ...(isReplaced ? ['a newer preset took the slot of this one'] : []),
    ...(isTooHigh
      ? [`lower the ceiling: it stands above the car's ${lowest.name}, ${lowest.limitKpa} kPa`]
      : []),
    ...(session.readiness.passed ? [] : ['pass the readiness check', ...session.readiness.missing]),
  ];
}
