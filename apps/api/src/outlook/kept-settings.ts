import type { PresetRecord } from '../presets/load-presets.js';
import type { PresetValues } from '../presets/preset-values.js';

/** Settings that differ by no more than this are the same, %: controllers step in 0.1 or more. */
const SAME_PCT = 0.01;

/** A revision as the history of settings reads it. */
export type SettingsRevision = { readonly revision: number } & Pick<
  PresetValues,
  'kind' | 'dutyPct' | 'gateHoldPct' | 'correctionStrength' | 'targetKpa'
>;

/** How a pull was set. */
export interface PullSettings {
  readonly dutyPct: number;
  readonly holdPct: number | null;
  readonly correctionStrength: number | null;
}

/**
 * The revision with which the stored settings that move the peak began to stand as they do. Where gate hold or a
 * closed loop steer by the target, the target is one of them.
 *
 * @param revisions newest first
 */
export function settingsKeptFrom(
  { values, car }: PresetRecord,
  revisions: readonly SettingsRevision[],
): number {
  const steersByTarget = values.gateHoldPct !== null || car.controller?.isClosedLoop === true;
  const isSame = (one: SettingsRevision): boolean =>
    one.kind === values.kind &&
    isAlike(one.dutyPct, values.dutyPct) &&
    isAlike(one.gateHoldPct, values.gateHoldPct) &&
    isAlike(one.correctionStrength, values.correctionStrength) &&
    (!steersByTarget || isAlike(one.targetKpa, values.targetKpa));
  const firstOther = revisions.findIndex((one) => !isSame(one));
  const oldest = firstOther === -1 ? revisions.at(-1) : revisions[firstOther - 1];
  return oldest?.revision ?? 1;
}

/**
 * Whether a pull was made at the stored settings. What was not written down counts as stored, as it does for the
 * proof.
 *
 * @param baseHoldPct gate hold that counts as stored: the stored one, or the one pulled with while none is stored
 */
export function isAtSettings(
  pull: PullSettings,
  { dutyPct, correctionStrength }: Pick<PresetValues, 'dutyPct' | 'correctionStrength'>,
  baseHoldPct: number | null,
): boolean {
  if (!isAlike(pull.dutyPct, dutyPct)) return false;
  if (pull.holdPct !== null && !isAlike(pull.holdPct, baseHoldPct)) return false;
  if (pull.correctionStrength === null || correctionStrength === null) return true;
  return isAlike(pull.correctionStrength, correctionStrength);
}

/** Whether two settings are the same; one that is not there is like another that is not there. */
export function isAlike(a: number | null, b: number | null): boolean {
  return a === null || b === null ? a === b : Math.abs(a - b) <= SAME_PCT;
}
