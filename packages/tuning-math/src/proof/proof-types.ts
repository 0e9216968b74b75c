import type { BoostGoal } from '../duty/duty-advice-types.js';
import type { PooledSpread, ToleranceInterval } from '../statistics/tolerance-interval.js';

/** One pull of the preset revision that is to be proven; void pulls are left out. */
export interface ProofPull {
  /** Recorded peak, kPa gauge, 0 or more. */
  readonly peakKpa: number;
  /** Whether its verdict lets it count. A pull that does not count still must not pass the ceiling. */
  readonly isUsable: boolean;
  /** Whether it was made with a heat-soaked car. */
  readonly isHeatSoaked: boolean;
  /**
   * Whether the timed override was on. Only such pulls prove a timed override, and none of them proves a
   * standing preset; null or left out: as the kind of the preset has it.
   */
  readonly isOverrideOn?: boolean | null | undefined;
  /** Timed override only: how long boost was seen to hold before it fell back, s; null where not seen. */
  readonly heldForS?: number | null | undefined;
}

/** What the workshop asks of a proof. */
export interface ProofRule {
  /** Share of all future pulls that shall lie inside the tolerance. */
  readonly coverageRatio: number;
  /** Confidence that they do. */
  readonly confidenceRatio: number;
  /** Least number of usable pulls. */
  readonly leastPulls: number;
  /** Whether one of them must be heat-soaked. */
  readonly needsHeatSoaked: boolean;
  /** Timed override only: whether a pull must show how long it holds before boost falls back. */
  readonly needsOverrideEnd: boolean;
}

/** Used where the workshop has set nothing else. Common practice, no source. */
export const DEFAULT_PROOF_RULE: ProofRule = {
  coverageRatio: 0.9,
  confidenceRatio: 0.95,
  leastPulls: 3,
  needsHeatSoaked: true,
  needsOverrideEnd: true,
};

/** All that a proof rests on. */
export interface ProofRequest {
  /** Null while target, tolerance or ceiling are not agreed. */
  readonly goal: BoostGoal | null;
  readonly pulls: readonly ProofPull[];
  /** What differs from `DEFAULT_PROOF_RULE`. */
  readonly rule?: Partial<ProofRule> | undefined;
  /** The workshop's own repeatability on cars of this kind, kPa; lets fewer pulls suffice. */
  readonly pooled?: PooledSpread | undefined;
  readonly kind?: 'standing' | 'timed-override' | undefined;
  /** Timed override only: how long it is to hold, s. */
  readonly holdSeconds?: number | null | undefined;
  readonly isSignedOff?: boolean | undefined;
  readonly isReplaced?: boolean | undefined;
}

/** State of a preset, as the data have it. */
export type ProofState = 'draft' | 'on-test' | 'proven' | 'signed-off' | 'replaced';

/** What a proof lacks. */
export type ProofGapCode =
  | 'no-goal'
  | 'no-pull'
  | 'too-few-pulls'
  | 'no-heat-soaked-pull'
  | 'ceiling-passed'
  | 'mean-off-target'
  | 'scatter-too-wide'
  | 'no-override-pull'
  | 'override-end-not-seen'
  | 'override-holds-too-long';

/** One thing that is missing, in plain words with its numbers. */
export interface ProofGap {
  readonly code: ProofGapCode;
  readonly text: string;
}

/** The answer of `provePreset`. */
export interface PresetProof {
  readonly state: ProofState;
  readonly isProven: boolean;
  /** Empty when proven. */
  readonly missing: readonly ProofGap[];
  /** Tolerance interval of the usable pulls, kPa; null where they are too few for one. */
  readonly interval: ToleranceInterval | null;
  readonly usablePulls: number;
  readonly heatSoakedPulls: number;
  readonly highestPeakKpa: number | null;
  /** Usable pulls in all that would prove it if mean and scatter stay; null where no number would. */
  readonly pullsLikelyNeeded: number | null;
}
