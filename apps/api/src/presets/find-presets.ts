import type { Preset } from '@pullbook/contracts';
import { readAdviceRules } from '../advice/read-advice-rules.js';
import type { Actor } from '../plumbing/actor.js';
import { pageArguments, toPage, type PageRequest } from '../plumbing/paging.js';
import { loadPresetCar, loadPresets } from './load-presets.js';
import { presentPreset } from './present-preset.js';

interface PresetPage {
  readonly items: Preset[];
  readonly nextCursor: string | null;
}

/**
 * The presets of a car, by slot, replaced ones too.
 *
 * @throws DomainError not-found for a car of another workshop
 */
export async function findPresets(actor: Actor, carId: string, page: PageRequest): Promise<PresetPage> {
  await loadPresetCar(actor.db, carId);
  const rules = await readAdviceRules(actor);
  const records = await loadPresets(actor.db, { carId }, pageArguments(page));
  return toPage(records, page, (record) => presentPreset(record, rules));
}
