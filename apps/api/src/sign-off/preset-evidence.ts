import type { PresetEvidence } from '@pullbook/contracts';
import { advisePreset, type AdvicePull, type AdviceRules } from '@pullbook/next-pull';
import type { PresetRecord } from '../presets/load-presets.js';

/** A standing pull as the evidence sees it. */
export interface EvidencePull extends AdvicePull {
  readonly heatSoaked: boolean;
}

/**
 * What the data of one visit say of a preset, and why it cannot be signed off yet. The ceiling counts as kept when no
 * standing pull at the accepted duty passed it, the ones that prove it included.
 *
 * @param pulls the visit's standing pulls of this preset, in order
 */
export function presetEvidence(
  { id, revision, values, car, isReplaced }: PresetRecord,
  pulls: readonly EvidencePull[],
  rules: AdviceRules,
): PresetEvidence {
  const asked = advisePreset({
    dutyRange: car.controller?.dutyPct ?? null,
    targetKpa: values.targetKpa,
    toleranceKpa: values.toleranceKpa,
    ceilingKpa: values.ceilingKpa,
    gateHoldPct: values.gateHoldPct,
    baseKpa: car.baseKpa,
    rules,
    pulls,
  });
  const accepted = asked.acceptedDutyPct;
  const usable = pulls.filter((pull) => pull.usable);
  const atAccepted = pulls.filter((pull) => accepted !== null && pull.dutyPct === accepted);
  const proving = pulls.filter((pull) => asked.provingPullNumbers.includes(pull.number));
  const peaksKpa = atAccepted.filter((pull) => pull.usable).map((pull) => pull.peakKpa);
  const ceilingKept = isCeilingKept([...atAccepted, ...proving], values.ceilingKpa);
  const { kind, name, slot, holdSeconds, purpose, targetKpa, toleranceKpa, ceilingKpa } = values;
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
    missing: [
      ...(isReplaced ? ['a newer preset took its slot'] : []),
      ...asked.missing,
      ...missingOfDuty(accepted, values.dutyPct),
      ...(accepted !== null && !ceilingKept ? ['a pull at the accepted duty passed the ceiling'] : []),
    ],
  };
}

function isCeilingKept(pulls: readonly EvidencePull[], ceilingKpa: number | null): boolean {
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
