import type { PresetProof } from '@pullbook/contracts';
import type { PresetStanding } from '@pullbook/tuning-math';
import type { WorkshopRules } from '../advice/read-advice-rules.js';
import type { PresetRecord } from './load-presets.js';

/** What the pulls at the stored settings prove, as the API tells it; null while goal or duty are missing. */
export function presentProof(
  { proof, atSettings }: PresetStanding,
  { pulls }: Pick<PresetRecord, 'pulls'>,
  rules: WorkshopRules,
): PresetProof | null {
  if (proof === null) return null;
  const { interval, isProven, usablePulls, heatSoakedPulls, highestPeakKpa, pullsLikelyNeeded } = proof;
  return {
    ...{ isProven, usablePulls, heatSoakedPulls, highestPeakKpa, pullsLikelyNeeded },
    coverageRatio: rules.coverageRatio,
    confidenceRatio: rules.confidenceRatio,
    meanKpa: interval?.mean ?? null,
    lowKpa: interval?.low ?? null,
    highKpa: interval?.high ?? null,
    pullsAskedFor: rules.requiredPulls,
    pullNumbers: atSettings.flatMap((index) => pulls[index]?.number ?? []),
  };
}
