import type { PresetRecord } from '../presets/load-presets.js';
import type { SessionRecord } from '../tuning-sessions/load-session.js';

/**
 * What keeps any pull of a preset from being driven in a tuning session, in plain words; empty where nothing does. That
 * its ceiling stands above what the car allows is told by the readiness check.
 */
export function missingBeforePull({ isReplaced }: PresetRecord, session: SessionRecord): string[] {
  return [
    ...(session.visit.isOpen ? [] : ['this visit is closed']),
    ...(isReplaced ? ['a newer preset took the slot of this one'] : []),
    ...(session.readiness.passed ? [] : ['pass the readiness check', ...session.readiness.missing]),
  ];
}
