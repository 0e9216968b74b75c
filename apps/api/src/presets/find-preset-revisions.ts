import type { PresetRevision } from '@pullbook/contracts';
import type { Actor } from '../plumbing/actor.js';
import { loadPreset, presetValuesOf } from './load-presets.js';

/**
 * Every revision of a preset as it was written, newest first.
 *
 * @throws DomainError not-found
 */
export async function findPresetRevisions(actor: Actor, presetId: string): Promise<PresetRevision[]> {
  await loadPreset(actor.db, presetId);
  const rows = await actor.db.presetRevision.findMany({
    where: { presetId },
    orderBy: { revision: 'desc' },
  });
  return rows.map((row) => ({
    revision: row.revision,
    ...presetValuesOf(row),
    reason: row.reason,
    madeBy: row.madeBy,
    madeAt: row.madeAt.toISOString(),
  }));
}
