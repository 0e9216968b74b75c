import type { BoostGoal, PeakPrediction } from '../duty/duty-advice-types.js';
import type { Sentence } from '../sentences/index.js';

/** What a controller's gate hold can be set to, all in % of target. */
export interface HoldController {
  readonly holdMin: number;
  readonly holdMax: number;
  /** Distance between two neighbouring settings, above 0. The grid starts at `holdMin`. */
  readonly holdStep: number;
}

/** What a preset is to reach, with the overshoot that is accepted. */
export interface HoldGoal extends BoostGoal {
  /** Highest accepted mean overshoot, (peak - settled) / settled, %; above 0 up to 30. */
  readonly overshootLimitPct: number;
}

/** One usable pull at a gate hold, with the duty unchanged. */
export interface HoldPull {
  readonly holdPct: number;
  /** Recorded peak, kPa gauge. */
  readonly peakKpa: number;
  /** Settled boost, kPa gauge, above 0. */
  readonly settledKpa: number;
  readonly riseTimeS?: number | null | undefined;
  readonly onsetRpm?: number | null | undefined;
}

/** All that the advice rests on. */
export interface GateHoldRequest {
  readonly controller: HoldController;
  readonly goal: HoldGoal;
  /** Largest step above the highest hold already pulled (above `holdMin` at first), points; default 10, as for duty. */
  readonly stepLimit?: number | undefined;
  /** Largest allowed chance that a pull passes the ceiling, in (0, 0.5]; default 0.02, as for duty. */
  readonly riskLimit?: number | undefined;
  /** Asked confidence that the mean overshoot keeps its limit, in [0.5, 0.99]; default 0.6. */
  readonly confidenceRatio?: number | undefined;
  /** Usable pulls in the order in which they were made, at most 200. */
  readonly pulls: readonly HoldPull[];
  /**
   * So many of the first pulls were made when somebody looked the car over and found it sound: alone they are no sign of
   * a fault any more. Left out: none.
   */
  readonly soundPulls?: number | undefined;
}

/** What to do next. */
export type GateHoldAction = 'pull' | 'repeat' | 'accept' | 'stop' | 'back-to-duty';

/** Why. */
export type GateHoldReasonCode =
  | 'first-pull'
  | 'step-limit'
  | 'ceiling-risk'
  | 'aim-at-limit'
  | 'back-down'
  | 'confirm'
  | 'reading-in-doubt'
  | 'overshoot-within-limit'
  | 'highest-setting'
  | 'faster-response'
  | 'peak-shifted'
  | 'peak-moved-by-hold'
  | 'overshoot-at-lowest-hold'
  | 'no-safe-hold'
  | 'ceiling-passed-again'
  | 'found-sound';

/** A reason in plain words with its numbers, and the same in pieces. */
export interface GateHoldReason extends Sentence {
  readonly code: GateHoldReasonCode;
}

/** What the next pull at the advised hold will show. */
export interface HoldPrediction extends PeakPrediction {
  /** Mean overshoot expected, %. */
  readonly overshootPct: number;
  /** Chance that the true mean overshoot at this hold is over its limit, 0 to 1. */
  readonly probabilityOverLimit: number;
}

/** What raising the hold has brought, from the lowest hold pulled to the advised one. */
export interface HoldGain {
  /** Shorter by this many seconds; null where no rise times were given. */
  readonly riseTimeS: number | null;
  /** Earlier by this many r/min; null where no onset speeds were given. */
  readonly onsetRpm: number | null;
}

/** The answer of `adviseGateHold`. */
export interface GateHoldAdvice {
  readonly action: GateHoldAction;
  /** Hold to pull, repeat or keep, on the controller's grid; null with `stop`, and with `back-to-duty` before the hold is found. */
  readonly holdPct: number | null;
  /** At `holdPct`; null without one. */
  readonly prediction: HoldPrediction | null;
  /** At least one; the first one decided. */
  readonly reasons: readonly GateHoldReason[];
  /** Positions in `pulls` (from 0) at the found hold; empty unless it is found. */
  readonly provedBy: readonly number[];
  readonly gain: HoldGain | null;
}
