import type { WorkshopTransaction } from '@pullbook/database';
import { DomainError } from '../plumbing/domain-error.js';
import { loadPreset, type PresetRecord } from '../presets/load-presets.js';
import { loadSession, type SessionRecord } from '../tuning-sessions/load-session.js';

/** A preset on the bench: the tuning session in which it is worked on, and what is on record of it. */
export interface BenchPreset {
  readonly session: SessionRecord;
  readonly preset: PresetRecord;
}

/**
 * A tuning session with a preset of its car.
 *
 * @throws DomainError not-found, preset-not-of-this-car
 */
export async function loadBenchPreset(
  db: WorkshopTransaction,
  sessionId: string,
  presetId: string,
): Promise<BenchPreset> {
  const session = await loadSession(db, sessionId);
  const preset = await loadPreset(db, presetId);
  if (preset.car.id !== session.visit.carId) {
    throw new DomainError('preset-not-of-this-car', `${preset.values.name} is a preset of another car`);
  }
  return { session, preset };
}
