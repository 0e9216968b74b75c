import type { Sentence } from '../sentences/index.js';

/** What a controller can be set to. All in % duty (share of each period in which the solenoid is energised). */
export interface DutyController {
  readonly dutyMin: number;
  readonly dutyMax: number;
  /** Distance between two neighbouring settings, > 0. The grid starts at `dutyMin`. */
  readonly dutyStep: number;
}

/** What a preset is to reach, kPa gauge. */
export interface BoostGoal {
  /** Wanted mean peak, > 0. */
  readonly targetKpa: number;
  /** Accepted distance of the mean peak from the target, > 0 and below the target. */
  readonly toleranceKpa: number;
  /** The level that no pull may pass, above the target. */
  readonly ceilingKpa: number;
}

/** One usable pull: the duty that was set and the peak that was recorded. */
export interface DutyPull {
  readonly duty: number;
  /** Recorded peak, kPa gauge, at least 0 (a pull that made no boost at all). */
  readonly peakKpa: number;
  /** How much warmer than at the first pull the charge air was, in °C; left out: judged from the pulls so far. */
  readonly heatSoakC?: number | undefined;
  /** Time since the pull before began, s; a long rest cools the car. Not used where `heatSoakC` is given. */
  readonly secondsSincePrevious?: number | undefined;
}

/** A car of the same build that was tuned before. */
export interface EarlierCar {
  /** Peak with the solenoid idle, kPa gauge; null or left out where nobody knows it. */
  readonly baseKpa?: number | null | undefined;
  /** Its usable pulls, at most 200; a car with fewer than three tells nothing. */
  readonly pulls: readonly DutyPull[];
}

/** All that the advice rests on. */
export interface DutyAdviceRequest {
  readonly controller: DutyController;
  readonly goal: BoostGoal;
  /** Largest step above the highest duty already pulled (or above `dutyMin` at first), % duty; default 10. */
  readonly stepLimit?: number | undefined;
  /** Largest allowed chance that a pull passes the ceiling, in (0, 0.5]; default 0.02. */
  readonly riskLimit?: number | undefined;
  /** Peak with the solenoid idle, kPa gauge; null or left out where nobody knows it. */
  readonly baseKpa?: number | null | undefined;
  /** Usable pulls in the order in which they were made, at most 200. */
  readonly pulls: readonly DutyPull[];
  /**
   * So many of the first pulls were made when somebody looked the car over and found it sound: no fault is read into
   * them any more. Left out: none.
   */
  readonly soundPulls?: number | undefined;
  /** Cars of this build from the workshop's own records, at most 8; they never loosen step limit and risk limit. */
  readonly earlierCars?: readonly EarlierCar[] | undefined;
}

/** What to do next. `duty` of the advice is null only with `stop`. */
export type DutyAction = 'pull' | 'repeat' | 'accept' | 'stop';

/** Why. The first reason of an advice is the one that decided; the others add to it. */
export type DutyReasonCode =
  | 'first-pull'
  | 'measure-base'
  | 'step-limit'
  | 'ceiling-risk'
  | 'aim-at-target'
  | 'back-down'
  | 'confirm'
  | 'low-reading-in-doubt'
  | 'high-reading-in-doubt'
  | 'learn-scatter'
  | 'inside-tolerance'
  | 'target-out-of-reach'
  | 'floor-over-target'
  | 'peak-soared'
  | 'ceiling-passed-again'
  | 'response-lost'
  | 'no-safe-duty'
  | 'no-duty-in-tolerance'
  | 'scatter-too-wide'
  | 'heat-soak'
  | 'found-sound'
  | 'earlier-cars'
  | 'expected-range';

/** Plain words with the numbers, in kPa and % duty, and the same in pieces. */
export interface DutyReason extends Sentence {
  readonly code: DutyReasonCode;
}

/** Range that the peak of the next pull at the advised duty is expected in, kPa gauge. */
export interface PeakPrediction {
  readonly medianKpa: number;
  readonly lowKpa: number;
  readonly highKpa: number;
  /** Share of peaks that the range is meant to hold: 0.95. */
  readonly level: number;
  /** Chance that the peak of the next pull passes the ceiling, 0 to 1. */
  readonly probabilityOverCeiling: number;
}

/** One point of the predicted response: range of the next peak at this duty, level 0.95. */
export interface DutyCurvePoint {
  readonly duty: number;
  readonly medianKpa: number;
  readonly lowKpa: number;
  readonly highKpa: number;
}

/** The answer of `adviseDuty`. */
export interface DutyAdvice {
  readonly action: DutyAction;
  /** Duty to pull, repeat or keep, on the controller's grid; null with `stop`. */
  readonly duty: number | null;
  /** At `duty`; null with `stop`. */
  readonly prediction: PeakPrediction | null;
  /** At least one. */
  readonly reasons: readonly DutyReason[];
  /** The whole predicted response, duty rising, at most 101 points. */
  readonly curve: readonly DutyCurvePoint[];
  /** Positions in `pulls` (from 0) that prove an accept; empty with every other action. */
  readonly provedBy: readonly number[];
  /** Chance that the true mean peak at `duty`, as warm as the car is now, is inside the tolerance; null with `stop`. */
  readonly probabilityInsideTolerance: number | null;
  /** Inferred pull-to-pull scatter (standard deviation), % of the peak. */
  readonly scatterPct: number;
}
