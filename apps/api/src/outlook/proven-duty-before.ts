import type { WorkshopTransaction } from '@pullbook/database';
import type { WorkshopRules } from '../advice/read-advice-rules.js';
import type { PresetRecord } from '../presets/load-presets.js';
import { loadHistory } from './load-history.js';

/**
 * The stored duty of a preset that another visit proved or signed off on this very car: the one duty at which a car that
 * came back may be pulled first, to hear whether it still does what it did. Null where there is none, and while a drift
 * alarm says that it does not.
 *
 * @param visitId the visit in which it is to be pulled
 * @returns % duty
 */
export async function provenDutyBefore(
  db: WorkshopTransaction,
  preset: PresetRecord,
  rules: WorkshopRules,
  visitId: string,
): Promise<number | null> {
  if (preset.values.dutyPct === null || preset.drift !== null || preset.isReplaced) return null;
  const { visits } = await loadHistory(db, preset, rules);
  const isKnown = visits.some(({ id, isSignedOff, isProof }) => id !== visitId && (isSignedOff || isProof));
  return isKnown ? preset.values.dutyPct : null;
}
