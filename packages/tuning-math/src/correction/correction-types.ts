import type { Sentence } from '../sentences/index.js';

/** What a closed-loop controller's correction strength can be set to, in the controller's own unit. */
export interface CorrectionController {
  readonly strengthMin: number;
  readonly strengthMax: number;
  /** Distance between two neighbouring settings, above 0. The grid starts at `strengthMin`. */
  readonly strengthStep: number;
}

/** One usable closed-loop pull. */
export interface CorrectionPull {
  readonly strength: number;
  /** Settled boost, kPa gauge, above 0. */
  readonly settledKpa: number;
  /** Oscillation about the settled boost; null where none was found. */
  readonly hunting: {
    readonly frequencyHz: number;
    /** Null where the swings do not decay measurably: taken as not damped. */
    readonly dampingRatio: number | null;
    /** Half the distance from crest to trough, kPa. */
    readonly amplitudeKpa: number;
  } | null;
}

/** All that the advice rests on. */
export interface CorrectionRequest {
  readonly controller: CorrectionController;
  readonly goal: { readonly targetKpa: number; readonly toleranceKpa: number };
  /** Usable pulls in the order in which they were made, 1 to 200. */
  readonly pulls: readonly CorrectionPull[];
}

/** What to do next. */
export type CorrectionAction = 'keep' | 'lower' | 'raise' | 'stop';

/** Why. */
export type CorrectionReasonCode =
  | 'steady'
  | 'hunting'
  | 'sagging'
  | 'at-lowest-strength'
  | 'at-highest-strength'
  | 'hunting-and-sagging'
  | 'hunting-not-from-correction';

/** The answer of `adviseCorrection`. */
export interface CorrectionAdvice {
  readonly action: CorrectionAction;
  /** Strength to pull next, or to keep; null with `stop`. */
  readonly strength: number | null;
  /** Mean settled error of the pulls at the last strength, kPa; positive above target. */
  readonly settledErrorKpa: number;
  /** Worst hunting at the last strength; null without any that counts. */
  readonly frequencyHz: number | null;
  readonly dampingRatio: number | null;
  readonly reasons: readonly ({ readonly code: CorrectionReasonCode } & Sentence)[];
}
