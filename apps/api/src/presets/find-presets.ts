import type { Preset } from '@pullbook/contracts';
import { readAdviceRules } from '../advice/read-advice-rules.js';
import type { Actor } from '../plumbing/actor.js';
import { loadPresetCar, loadPresets } from './load-presets.js';
import { presentPreset } from './present-preset.js';

/**
 * All presets of a car, by slot, replaced ones too.
 *
 * @throws DomainError not-found for a car of another workshop
 */
export async function findPresets(actor: Actor, carId: string): Promise<Preset[]> {
  await loadPresetCar(actor.db, carId);
  const rules = await readAdviceRules(actor);
  const records = await loadPresets(actor.db, { carId });
  return records.map((record) => presentPreset(record, rules));
}
