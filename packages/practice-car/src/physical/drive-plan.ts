import type { Fault } from '../faults/fault.js';
import type { BoostControlSettings } from './boost-control.js';
import type { DrivePhase } from './driver.js';
import type { Ambient } from './physical-car.js';

/** A stretch of a drive under one set of settings, for example slowing down, cruising and one pull. */
export interface DriveLeg {
  readonly phases: readonly DrivePhase[];
  readonly settings: BoostControlSettings;
  readonly gradientPct: number;
  readonly faults: readonly Fault[];
}

export interface DriveConditions {
  readonly ambient: Ambient;
  /** How far the charge cooler starts above the air, K. */
  readonly heatSoakC: number;
  readonly supplyV: number;
  /** The fuel is cut above this; null = no cut. */
  readonly overBoostCutKpa: number | null;
  /** Gear and engine speed that the drive starts at; gear 0 = standing at idle. */
  readonly startGear: number;
  readonly startRpm: number;
  /** Where in its period the solenoid is when the drive starts, 0 to 1. */
  readonly solenoidPhaseRatio: number;
  /** Longest integration step. */
  readonly stepS: number;
}

/** Default of `DriveConditions.stepS`: peaks have converged to within 0.1 % (see the convergence test). */
export const STEP_S = 0.004;
