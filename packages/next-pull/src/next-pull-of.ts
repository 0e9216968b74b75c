import { cautionsBeforePulling, type AdviceBasis, type NextPull } from '@pullbook/contracts';
import { advisePreset, type AdvicePull } from './advise-preset.js';
import { foundSoundAfter } from './found-sound-after.js';

/**
 * The next pull of a preset, or what is missing before there may be one. The server asks it with the pulls on record,
 * a device without network with those and the ones that it has not sent yet: the same input gives the same answer.
 *
 * @param basis goal, limits, rules, and what is missing whatever was driven (readiness, a closed visit)
 * @param pulls pulls of this preset in this visit in the order in which they were made, voided ones left out
 */
export function nextPullOf(basis: AdviceBasis, pulls: readonly AdvicePull[]): NextPull {
  const { missing: missingAnyway, ...rest } = basis;
  const asked = advisePreset({ ...rest, pulls });
  const missing = [...asked.missing, ...missingAnyway];
  const usable = pulls.filter((pull) => pull.usable);
  const duties = usable.map((pull) => pull.dutyPct);
  return {
    ready: missing.length === 0,
    missing,
    cautions: [...cautionsBeforePulling],
    advice: missing.length === 0 ? asked.advice : null,
    restsOnPulls: usable.map((pull) => pull.number),
    foundSoundAfterPull: foundSoundAfter(pulls),
    highestDutyPct: duties.length === 0 ? null : Math.max(...duties),
    stepLimit: basis.rules.stepLimit,
    riskLimit: basis.rules.riskLimit,
    basis,
  };
}
