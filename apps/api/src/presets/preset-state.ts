import type { PresetState } from '@pullbook/contracts';

/** What the state of a preset follows from. */
export interface PresetFacts {
  readonly isReplaced: boolean;
  readonly revision: number;
  readonly signedOffRevision: number | null;
  readonly hasController: boolean;
  readonly targetKpa: number | null;
  readonly ceilingKpa: number | null;
  readonly dutyPct: number | null;
  /** Pulls that stand, voided ones left out, of the newest visit in which it was pulled. */
  readonly pullCount: number;
  /** The duty that the advice accepts on those pulls; null while it accepts none. */
  readonly acceptedDutyPct: number | null;
}

/** Where a preset stands and what is missing before it can move on, in plain words. */
export interface PresetStanding {
  readonly state: PresetState;
  readonly missing: string[];
}

/**
 * State of a preset, from data alone: draft until goal and first pull are there, on test until the advice accepts a
 * duty and that duty is stored, then proven, then signed off for exactly the sealed revision; replaced once a newer
 * preset took its slot.
 */
export function derivePresetState(facts: PresetFacts): PresetStanding {
  if (facts.isReplaced) return { state: 'replaced', missing: [] };
  if (facts.signedOffRevision === facts.revision) return { state: 'signed-off', missing: [] };
  const goal = missingOfGoal(facts);
  if (goal.length > 0 || facts.pullCount === 0) {
    return {
      state: 'draft',
      missing: [...goal, ...(facts.pullCount === 0 ? ['no pull is on record yet'] : [])],
    };
  }
  const duty = missingOfDuty(facts);
  if (duty !== null) return { state: 'on-test', missing: [duty] };
  return { state: 'proven', missing: ['it is not signed off yet'] };
}

function missingOfGoal({ targetKpa, ceilingKpa, hasController }: PresetFacts): string[] {
  return [
    ...(hasController ? [] : ["the car's controller is not described yet"]),
    ...(targetKpa === null ? ['no target is agreed'] : []),
    ...(ceilingKpa === null ? ['no ceiling is agreed'] : []),
  ];
}

function missingOfDuty({ acceptedDutyPct, dutyPct }: PresetFacts): string | null {
  if (acceptedDutyPct === null) return 'the advice has not accepted a duty yet';
  if (dutyPct === null) return `the accepted duty (${acceptedDutyPct} %) is not stored in the preset yet`;
  if (dutyPct !== acceptedDutyPct) {
    return `the stored duty (${dutyPct} %) is not the accepted one (${acceptedDutyPct} %)`;
  }
  return null;
}
