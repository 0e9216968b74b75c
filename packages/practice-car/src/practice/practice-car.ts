import type { BoostGoal, DutyController } from '@pullbook/tuning-math';
import type { FaultKind } from '../faults/fault.js';

/** How much a practice car asks of the one who practises on it, easiest first. */
export const PRACTICE_LEVELS = ['calm', 'lively', 'steep', 'doubtful'] as const;

export type PracticeLevel = (typeof PRACTICE_LEVELS)[number];

/** Which practice car: the same level and number are the same car, everywhere and always. */
export interface PracticeOrder {
  readonly level: PracticeLevel;
  /** 1 to 9999. */
  readonly number: number;
}

/** What a person who is about to pull may know of a practice car. */
export interface PracticeSheet extends PracticeOrder {
  readonly engine: string;
  /** Whether a log with the trace of boost comes with each pull; else there is a gauge alone. */
  readonly hasLog: boolean;
  readonly controller: DutyController;
  readonly goal: BoostGoal;
  /** Peak with the solenoid idle as the workshop measured it, kPa gauge; null where it did not. */
  readonly baseKpa: number | null;
  readonly overBoostCutKpa: number;
}

/** One simulated pull, with the truth beside it. */
export interface PracticePull {
  readonly duty: number;
  /** What is read off the gauge, kPa gauge. */
  readonly recordedPeakKpa: number;
  /** Mean of such pulls, as hot as the car was, faults included, kPa gauge. */
  readonly trueMeanKpa: number;
  /** Reads falsely low: a lifted throttle, a short run. */
  readonly isFalse: boolean;
  /** Whether a log shows that it was too short; never so without a log. */
  readonly isSeenShort: boolean;
  /** Whether a fault moved its mean by more than 3 %. */
  readonly showsFault: boolean;
  /** Boost over time, about 25 rows a second; null without a log. */
  readonly trace: PracticeTrace | null;
}

export interface PracticeTrace {
  readonly timeS: readonly number[];
  readonly boostKpa: readonly number[];
}

/** What is wrong with a car: a part of the physical model, or of a response shape. */
export type PracticeFaultName = FaultKind | 'soaring' | 'falling';

/** A car that can be driven; only the simulation holds it, the person sees its sheet. */
export interface PracticeCar {
  readonly sheet: PracticeSheet;
  /** Drives the last of these duties, % after the others; the same duties give the same pull. */
  readonly pullAfter: (duties: readonly number[]) => PracticePull;
  /** Mean peak of the sound car at a duty once it has made so many pulls, kPa gauge. */
  readonly soundMeanKpa: (duty: number, pullsMade: number) => number;
  readonly fault: { readonly name: PracticeFaultName; readonly fromPull: number } | null;
}
