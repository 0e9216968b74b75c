import type { AdviceBasis } from '@pullbook/contracts';
import type { AdvicePull } from '@pullbook/next-pull';
import type { PracticeEnding, PracticeSheet } from '@pullbook/practice-car';
import { practiceRules } from '../../../../practice/practice-rules';
import type { TakenPull } from '../../../../practice/practice-question';

/** How far a trainee has come with one car. */
export interface Practice {
  readonly pulls: readonly TakenPull[];
  /** Numbers of the pulls before which the book's advice was looked at. */
  readonly askedAt: readonly number[];
  readonly ending: PracticeEnding | null;
}

export const noPractice: Practice = { pulls: [], askedAt: [], ending: null };

/** What the advice rests on; the same as that of a preset on test. */
export function basisOf({ controller, goal, baseKpa }: PracticeSheet): AdviceBasis {
  const { dutyMin, dutyMax, dutyStep } = controller;
  return {
    dutyRange: { min: dutyMin, max: dutyMax, step: dutyStep },
    ...goal,
    gateHoldPct: null,
    provenDutyPct: null,
    baseKpa,
    rules: practiceRules,
    missing: [],
  };
}

/** Counts towards the advice: not set aside, and not seen to be short. */
export const isUsable = (pull: TakenPull): boolean => !pull.isSetAside && !pull.isSeenShort;

/** The pulls as the advice sees them. */
export const advicePulls = (pulls: readonly TakenPull[]): AdvicePull[] =>
  pulls.map((pull, index) => ({
    number: index + 1,
    dutyPct: pull.duty,
    peakKpa: pull.recordedPeakKpa,
    usable: isUsable(pull),
    // Set aside, it says nothing of the car any more.
    foundSoundAt: pull.isSetAside ? null : pull.foundSoundAt,
  }));
