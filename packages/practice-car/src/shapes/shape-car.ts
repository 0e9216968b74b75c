import type { BoostGoal, DutyController } from '@pullbook/tuning-math';

/** What a car is drawn to be: each is a formula of its own, see `JUDGEMENT_SHAPES` and `DEVELOPMENT_SHAPES`. */
export interface ResponseShape {
  readonly name: string;
  /** What can be known of it: a healthy response, or one of the kinds that must be stopped. */
  readonly kind: 'healthy' | 'out-of-reach' | 'floor-over-target' | 'soaring-fault' | 'falling-fault';
}

/** Mean peak, kPa gauge, of the cold and healthy car at a duty, %. Never falls as duty rises. */
export type MeanPeakKpa = (duty: number) => number;

/** What happens to the car during the tuning session. */
export interface ShapeFault {
  /** Position of the first pull that it can touch, from 0. */
  readonly fromPull: number;
  /** Mean peak with the fault, kPa gauge, given the healthy mean at that duty. */
  readonly meanKpa: (healthyKpa: number) => number;
}

/** How the draw departs from what the shapes were made with: 1 leaves a figure as it is. */
export interface ShapeConditions {
  /** Factor on the pull-to-pull scatter. */
  readonly scatter: number;
  /** Factor on the shift by heat soak. */
  readonly soak: number;
  /** Factor on the share of false pulls. */
  readonly falsePulls: number;
  /** Factor on the steepness of the rise over duty. */
  readonly steepness: number;
}

/** A car whose response is known: practice for people, a measure for the advice. */
export interface ShapeCar {
  readonly shape: ResponseShape;
  readonly seed: number;
  readonly controller: DutyController;
  readonly goal: BoostGoal;
  /** As measured by the workshop; null where it was not. */
  readonly baseKpa: number | null;
  readonly truth: ShapeTruth;
}

/** What only the practice car knows. */
export interface ShapeTruth {
  readonly meanKpa: MeanPeakKpa;
  /** Pull-to-pull scatter: standard deviation over mean. */
  readonly scatterRatio: number;
  /** Shift of the mean once the car is soaked with heat, share of the mean, and pulls until two thirds of it. */
  readonly soakShiftRatio: number;
  readonly soakPulls: number;
  /** Share of pulls that read falsely low. */
  readonly falsePullShare: number;
  readonly fault: ShapeFault | null;
}

/** One pull of a shape car, with the truth beside it. */
export interface ShapePull {
  readonly duty: number;
  readonly peakKpa: number;
  /** Mean of such pulls, as hot as the car was, fault included. */
  readonly trueMeanKpa: number;
  readonly isFalse: boolean;
  /** Whether a fault moved this pull's mean by more than 3 %. */
  readonly showsFault: boolean;
}
