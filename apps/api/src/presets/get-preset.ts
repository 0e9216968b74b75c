import type { Preset } from '@pullbook/contracts';
import { readAdviceRules } from '../advice/read-advice-rules.js';
import type { Actor } from '../plumbing/actor.js';
import { loadPreset } from './load-presets.js';
import { presentPreset } from './present-preset.js';

/**
 * One preset with its state.
 *
 * @throws DomainError not-found
 */
export async function getPreset(actor: Actor, presetId: string): Promise<Preset> {
  return presentPreset(await loadPreset(actor.db, presetId), await readAdviceRules(actor));
}
