import type { AdviceBasis, DutyAdvice, SettingRange } from '@pullbook/contracts';
import { ArgumentError, type DutyAdviceRequest } from '@pullbook/tuning-math';
import { pullsAtBaseHold } from './pulls-at-base-hold.js';
import { adviseOnce, type TracedDutyAdvice } from './advise-once.js';
import { soundPulls } from './sound-pulls.js';

/** The workshop's own rules for every advice. */
export type AdviceRules = AdviceBasis['rules'];

/** A pull as the advice sees it. */
export interface AdvicePull {
  readonly number: number;
  readonly dutyPct: number;
  /** Gate hold, % of target; null or left out where it was not written down. */
  readonly holdPct?: number | null | undefined;
  readonly peakKpa: number;
  readonly usable: boolean;
  /** When somebody looked the car over after this pull and found nothing wrong; null where nobody did. */
  readonly foundSoundAt: Date | string | null | undefined;
}

/** All that the advice for one preset rests on. Pulls in the order in which they were made, voided ones left out. */
export interface PresetMaterial extends Readonly<Omit<AdviceBasis, 'missing' | 'provenDutyPct'>> {
  readonly pulls: readonly AdvicePull[];
}

/** What the advice says of a preset. */
export interface PresetAdvice {
  /** Null where something is missing that an advice needs. */
  readonly advice: DutyAdvice | null;
  /** What is missing, in plain words; empty where there is an advice. */
  readonly missing: string[];
  readonly acceptedDutyPct: number | null;
  /** Numbers of the pulls that prove the accepted duty; empty until then. */
  readonly provingPullNumbers: number[];
}

/**
 * Asks the tuning math about one preset, by the workshop's rules: the same answer for the visit screen, the preset's
 * state and the sign-off. Where the math accepts on fewer pulls than the workshop asks for, the duty is to be repeated.
 */
export function advisePreset(material: PresetMaterial): PresetAdvice {
  const { dutyRange, targetKpa, ceilingKpa } = material;
  const missing = [
    ...(dutyRange === null ? ["describe the car's controller"] : []),
    ...(targetKpa === null ? ['agree the target of this preset'] : []),
    ...(ceilingKpa === null ? ['agree the ceiling of this preset'] : []),
  ];
  if (dutyRange === null || targetKpa === null || ceilingKpa === null) return withoutAdvice(missing);
  const usable = pullsAtBaseHold(material.pulls, material.gateHoldPct ?? null);
  try {
    const goal = { targetKpa, ceilingKpa, toleranceKpa: material.toleranceKpa };
    const request = {
      ...requestOf(material, dutyRange, goal, usable),
      ...soundPulls(material.pulls, usable),
    };
    return judge(adviseOnce(request), material.rules, usable);
  } catch (error) {
    if (!(error instanceof ArgumentError)) throw error;
    return withoutAdvice([`no advice is possible: ${error.message}`]);
  }
}

function withoutAdvice(missing: string[]): PresetAdvice {
  return { advice: null, missing, acceptedDutyPct: null, provingPullNumbers: [] };
}

function requestOf(
  { rules, baseKpa, earlierCars }: PresetMaterial,
  range: SettingRange,
  goal: DutyAdviceRequest['goal'],
  usable: readonly AdvicePull[],
): DutyAdviceRequest {
  return {
    controller: { dutyMin: range.min, dutyMax: range.max, dutyStep: range.step },
    goal,
    stepLimit: rules.stepLimit,
    riskLimit: rules.riskLimit,
    baseKpa,
    // A recorded peak below ambient made no boost at all, which is what 0 says to the advice.
    pulls: usable.map(({ dutyPct, peakKpa }) => ({ duty: dutyPct, peakKpa: Math.max(0, peakKpa) })),
    ...(earlierCars ? { earlierCars } : {}),
  };
}

function judge(
  { advice, provedBy }: TracedDutyAdvice,
  { requiredPulls }: AdviceRules,
  usable: readonly AdvicePull[],
): PresetAdvice {
  if (advice.action !== 'accept')
    return { advice, missing: [], acceptedDutyPct: null, provingPullNumbers: [] };
  const count = usable.filter((pull) => pull.dutyPct === advice.duty).length;
  if (count < requiredPulls) {
    const text = `The peak fits; this workshop asks for ${requiredPulls} usable pulls at the accepted duty and ${count} ${count === 1 ? 'is' : 'are'} on record.`;
    const reasons = [{ code: 'pulls-asked-for', text }, ...advice.reasons];
    return {
      advice: { ...advice, action: 'repeat', reasons },
      missing: [],
      acceptedDutyPct: null,
      provingPullNumbers: [],
    };
  }
  const proving = provedBy.flatMap((index) => usable[index]?.number ?? []);
  return { advice, missing: [], acceptedDutyPct: advice.duty, provingPullNumbers: proving };
}
