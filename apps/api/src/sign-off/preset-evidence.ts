import type { FoundSound, PresetEvidence } from '@pullbook/contracts';
import type { PresetAdvice } from '@pullbook/next-pull';
import type { WorkshopRules } from '../advice/read-advice-rules.js';
import type { PresetPull, PresetRecord } from '../presets/load-presets.js';
import { adviceOf } from '../presets/present-preset.js';
import { presentProof } from '../presets/present-proof.js';
import { presetStanding } from '../presets/preset-standing.js';
import { sayMissing } from '../presets/say-missing.js';

/** A standing pull of the visit, with what was written down when the car was looked over after it. */
export interface EvidencePull extends PresetPull {
  readonly foundSoundAt: Date | null;
  readonly foundSoundNote: string | null;
  readonly foundSoundBy: string | null;
}

/**
 * What the data of one visit say of a preset, and why it cannot be signed off yet. The ceiling counts as kept when no
 * standing pull at the accepted duty passed it, the ones that prove it included.
 *
 * @param pulls the visit's standing pulls of this preset, in order
 */
export function presetEvidence(
  preset: PresetRecord,
  pulls: readonly EvidencePull[],
  rules: WorkshopRules,
): PresetEvidence {
  const { id, revision, values, isReplaced } = preset;
  const inVisit: PresetRecord = { ...preset, pulls };
  const asked = adviceOf(inVisit, rules);
  const accepted = asked.acceptedDutyPct;
  const usable = pulls.filter((pull) => pull.usable);
  const atAccepted = pulls.filter((pull) => isAt(pull, accepted, values.gateHoldPct));
  const proving = pulls.filter((pull) => asked.provingPullNumbers.includes(pull.number));
  const peaksKpa = atAccepted.filter((pull) => pull.usable).map((pull) => pull.peakKpa);
  const ceilingKept = isCeilingKept([...atAccepted, ...proving], values.ceilingKpa);
  const { kind, name, slot, holdSeconds, purpose, targetKpa, toleranceKpa, ceilingKpa } = values;
  const ofProof = proofOf(inVisit, rules, asked);
  return {
    presetId: id,
    revision,
    ...{ name, slot, kind, holdSeconds, purpose, targetKpa, toleranceKpa, ceilingKpa },
    dutyPct: values.dutyPct,
    gateHoldPct: values.gateHoldPct,
    accepted: accepted !== null && values.dutyPct === accepted,
    usablePullCount: usable.length,
    ...spreadOf(peaksKpa),
    provingPullNumbers: asked.provingPullNumbers,
    ceilingKept,
    heatSoakedPull: usable.some((pull) => pull.heatSoaked),
    ...ofProof,
    foundSound: pulls.flatMap(foundSoundOf),
    missing: [
      ...(isReplaced ? ['a newer preset took its slot'] : []),
      ...asked.missing,
      ...missingOfDuty(accepted, values.dutyPct),
      ...(accepted !== null && !ceilingKept ? ['a pull at the accepted duty passed the ceiling'] : []),
      ...(rules.signOffNeedsProof ? ofProof.unproven.map((part) => `not proven: ${part}`) : []),
    ],
  };
}

function foundSoundOf({ number, foundSoundAt, foundSoundNote, foundSoundBy }: EvidencePull): FoundSound[] {
  if (foundSoundAt === null) return [];
  const at = foundSoundAt.toISOString();
  return [{ afterPull: number, at, note: foundSoundNote ?? '', by: foundSoundBy ?? '' }];
}

/** What the pulls of the visit prove, whether the preset is signed off already or not. */
function proofOf(
  inVisit: PresetRecord,
  rules: WorkshopRules,
  asked: PresetAdvice,
): Pick<PresetEvidence, 'proven' | 'proof' | 'unproven'> {
  const standing = presetStanding({ ...inVisit, signedOffRevision: null, isReplaced: false }, rules, asked);
  const proven = standing.state === 'proven';
  return {
    proven,
    proof: presentProof(standing, inVisit, rules),
    unproven: proven ? [] : sayMissing(standing, rules.requiredPulls),
  };
}

/** Whether a pull was made at the accepted duty and, where one is stored, at the stored gate hold. */
function isAt(pull: PresetPull, dutyPct: number | null, holdPct: number | null): boolean {
  if (dutyPct === null || pull.dutyPct !== dutyPct) return false;
  return holdPct === null || pull.holdPct === null || pull.holdPct === holdPct;
}

function isCeilingKept(pulls: readonly PresetPull[], ceilingKpa: number | null): boolean {
  return ceilingKpa !== null && pulls.length > 0 && pulls.every((pull) => pull.peakKpa <= ceilingKpa);
}

function spreadOf(
  peaksKpa: readonly number[],
): Pick<PresetEvidence, 'meanPeakKpa' | 'lowestPeakKpa' | 'highestPeakKpa'> {
  if (peaksKpa.length === 0) return { meanPeakKpa: null, lowestPeakKpa: null, highestPeakKpa: null };
  return {
    meanPeakKpa: peaksKpa.reduce((sum, peakKpa) => sum + peakKpa, 0) / peaksKpa.length,
    lowestPeakKpa: Math.min(...peaksKpa),
    highestPeakKpa: Math.max(...peaksKpa),
  };
}

function missingOfDuty(accepted: number | null, stored: number | null): string[] {
  if (accepted === null) return ['the advice has not accepted a duty in this visit'];
  if (stored === null) return [`the accepted duty (${accepted} %) is not stored in the preset`];
  if (stored !== accepted) return [`the stored duty (${stored} %) is not the accepted one (${accepted} %)`];
  return [];
}
