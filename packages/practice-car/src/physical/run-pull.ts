import type { Fault } from '../faults/fault.js';
import { checkPullOptions } from './check-pull-options.js';
import { measurePull, type PullTruth } from './measure-pull.js';
import type { PhysicalCar } from './physical-car.js';
import { PULL_DEFAULTS, type PullOptions, type PullPlan } from './pull-plan.js';
import type { DriveConditions, DriveLeg } from './drive-plan.js';
import { simulateDrive } from './simulate-drive.js';
import { cutTrace, type Trace } from './trace.js';

export interface PullResult extends PullTruth {
  /** Noise-free, from a moment before the throttle opens to a moment after it closes. */
  readonly trace: Trace;
}

const END_RATIO = 0.97;
const LIFT_AT_RATIO = 0.72;
const CRUISE_BEFORE_S = 0.6;
const AFTER_S = 0.4;

/** Engine speed at which the driver of a faulty pull lifts; null for one who does not. */
export function liftRpm(faults: readonly Fault[], endRpm: number): number | null {
  return faults.some((fault) => fault.kind === 'throttle-lift') ? LIFT_AT_RATIO * endRpm : null;
}

/** The part of a drive that is one pull under its settings, without what leads up to it. */
export function pullPhase(car: PhysicalCar, plan: PullPlan): DriveLeg['phases'][number] {
  const endRpm = plan.endRpm ?? END_RATIO * car.engine.revLimitRpm;
  return { kind: 'pull', gear: plan.gear, endRpm, liftRpm: liftRpm(plan.faults, endRpm) };
}

/** The leg of one pull: a short cruise, the pull, a moment of coasting. */
function pullLeg(car: PhysicalCar, plan: PullPlan): DriveLeg {
  const cruise = { kind: 'cruise', gear: plan.gear, engineRpm: plan.startRpm } as const;
  return {
    phases: [
      { ...cruise, durationS: CRUISE_BEFORE_S },
      pullPhase(car, plan),
      { ...cruise, engineRpm: 0, durationS: AFTER_S },
    ],
    settings: plan,
    gradientPct: plan.gradientPct,
    faults: plan.faults,
  };
}

/** Air, heat, supply, faults and step of a plan, for the simulation. */
export function conditionsOf(plan: PullPlan): DriveConditions {
  return { ...plan, startGear: plan.gear };
}

/**
 * One full-load run, simulated, with the truth about it.
 *
 * Deterministic: the same car and options give the same result bit for bit. For the scatter of real pulls see
 * `varyPull`.
 *
 * @param car from `drawCar`
 * @param options duty and whatever differs from `PULL_DEFAULTS`
 * @returns peak, settled boost, overshoot, rise time, onset speed and the trace behind them; times from the trace's
 *   first row
 * @throws OutOfRangeError, NotFiniteError for options that no pull can have
 * Cost: a few milliseconds of computing for each second driven.
 * @example runPull(drawCar(seededRandom(1)), { dutyPct: 30 }).peakKpa > 0 // true
 */
export function runPull(car: PhysicalCar, options: PullOptions): PullResult {
  const plan: PullPlan = { ...PULL_DEFAULTS, ...options };
  checkPullOptions(car, plan);
  const trace = simulateDrive(car, [pullLeg(car, plan)], conditionsOf(plan));
  const first = trace.phase.indexOf(1);
  const after = trace.phase.findIndex((phase) => phase > 1);
  // The row at which the driver lets go still belongs to the pull: it holds the cut that made them do so.
  const truth = measurePull(cutTrace(trace, first, after + 1), plan.targetKpa);
  if (truth === null) throw new Error('runPull: the throttle never opened');
  return { ...truth, trace };
}
