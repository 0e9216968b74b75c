import type * as rows from '@pullbook/database';
import type { WorkshopTransaction } from '@pullbook/database';
import { PresetKind } from '@pullbook/contracts';
import type { SettingsRevision } from './kept-settings.js';

const pullFields = {
  ...{ id: true, visitId: true, tuningSessionId: true, number: true, recordedAt: true, presetRevision: true },
  ...{ dutyPct: true, holdPct: true, correctionStrength: true, overrideOn: true, heldForS: true },
  ...{ peakKpa: true, usable: true, heatSoaked: true, gear: true, gradientPct: true, intakeC: true },
  foundSoundAt: true,
  visit: { select: { number: true } },
  tuningSession: { select: { air: true } },
} as const;

/** A standing pull of a preset with its visit and the air of its tuning session. */
export type HistoryRow = Pick<
  rows.Pull,
  | ('id' | 'visitId' | 'tuningSessionId' | 'number' | 'recordedAt' | 'presetRevision')
  | ('dutyPct' | 'holdPct' | 'correctionStrength' | 'overrideOn' | 'heldForS')
  | ('peakKpa' | 'usable' | 'heatSoaked' | 'gear' | 'gradientPct' | 'intakeC' | 'foundSoundAt')
> & { readonly visit: { readonly number: number }; readonly tuningSession: { readonly air: unknown } };

/** All standing pulls of a preset, at whatever setting, in order of time. */
export function readPulls(db: WorkshopTransaction, presetId: string): Promise<HistoryRow[]> {
  return db.pull.findMany({
    where: { presetId, voidedAt: null },
    orderBy: [{ visit: { number: 'asc' } }, { recordedAt: 'asc' }, { number: 'asc' }],
    select: pullFields,
  });
}

/** The settings of a preset as they were written, newest first. */
export async function readRevisions(db: WorkshopTransaction, presetId: string): Promise<SettingsRevision[]> {
  const found = await db.presetRevision.findMany({
    where: { presetId },
    orderBy: { revision: 'desc' },
    select: {
      ...{ revision: true, kind: true, dutyPct: true },
      ...{ gateHoldPct: true, correctionStrength: true, targetKpa: true },
    },
  });
  return found.map((row) => ({ ...row, kind: PresetKind.parse(row.kind) }));
}
