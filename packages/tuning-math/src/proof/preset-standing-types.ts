import type { PooledSpread } from '../statistics/tolerance-interval.js';
import type { PresetProof, ProofPull, ProofRule, ProofState } from './proof-types.js';

/** A pull with the settings that it was made at. */
export interface SetPull extends ProofPull {
  readonly dutyPct: number;
  /** Gate hold, % of target; null where it was not written down. */
  readonly holdPct?: number | null | undefined;
}

/** All that the state of a preset follows from. */
export interface PresetStandingRequest {
  readonly isReplaced: boolean;
  readonly revision: number;
  /** The revision that a sign-off has sealed; null while none has. */
  readonly signedOffRevision: number | null;
  readonly hasController: boolean;
  readonly kind?: 'standing' | 'timed-override' | undefined;
  /** Timed override only: how long it is to hold, s. */
  readonly holdSeconds?: number | null | undefined;
  readonly targetKpa: number | null;
  readonly toleranceKpa: number;
  readonly ceilingKpa: number | null;
  /** Settings as the preset stores them; null while not found. */
  readonly dutyPct: number | null;
  readonly gateHoldPct?: number | null | undefined;
  /** Duty that the advice accepts; only the words need it. */
  readonly acceptedDutyPct?: number | null | undefined;
  /** What the advice says while it tells the tuner to stop: no preset is proven meanwhile. */
  readonly stopText?: string | null | undefined;
  /** Pulls of the preset at any setting, void ones left out. */
  readonly pulls: readonly SetPull[];
  /** What differs from `DEFAULT_PROOF_RULE`; `leastPulls` is the number that the workshop asks for. */
  readonly rule?: Partial<ProofRule> | undefined;
  readonly pooled?: PooledSpread | undefined;
}

/** What keeps a preset from its next state, beside what its proof lacks. */
export type StandingGapCode =
  | PresetProof['missing'][number]['code']
  | 'no-controller'
  | 'no-target'
  | 'no-ceiling'
  | 'no-duty'
  | 'advice-stops'
  | 'no-pull-at-settings'
  | 'not-signed-off';

/** One thing that is missing, in plain words with its numbers. */
export interface StandingGap {
  readonly code: StandingGapCode;
  readonly text: string;
}

/** Where a preset stands, and what is missing before it can move on. */
export interface PresetStanding {
  readonly state: ProofState;
  readonly missing: readonly StandingGap[];
  /** The proof over the pulls at the stored settings; null while goal or duty are missing. */
  readonly proof: PresetProof | null;
  /** Positions in `pulls` (from 0) of those made at the stored settings. */
  readonly atSettings: readonly number[];
}
