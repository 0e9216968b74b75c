import type { PresetEvidence } from '@pullbook/contracts';
import type { WorkshopTransaction } from '@pullbook/database';
import type { WorkshopRules } from '../advice/read-advice-rules.js';
import { loadPresets } from '../presets/load-presets.js';
import { presetEvidence } from './preset-evidence.js';

/** What the data of a visit say of every preset of its car that is not replaced, in slot order. */
export async function loadEvidence(
  db: WorkshopTransaction,
  visit: { id: string; carId: string },
  rules: WorkshopRules,
): Promise<PresetEvidence[]> {
  const presets = await loadPresets(db, { carId: visit.carId });
  const pulls = await db.pull.findMany({
    where: { visitId: visit.id, voidedAt: null },
    orderBy: [{ presetId: 'asc' }, { number: 'asc' }],
    select: {
      ...{ presetId: true, number: true, dutyPct: true, holdPct: true, peakKpa: true },
      ...{ usable: true, heatSoaked: true, overrideOn: true, heldForS: true, foundSoundAt: true },
      ...{ foundSoundNote: true, foundSoundBy: true },
    },
  });
  return presets
    .filter((preset) => !preset.isReplaced)
    .map((preset) =>
      presetEvidence(
        preset,
        pulls.filter((pull) => pull.presetId === preset.id),
        rules,
      ),
    );
}
