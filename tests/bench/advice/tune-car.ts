import {
  dutyGrid,
  FAULT_CODES,
  type DutyAction,
  type DutyAdviceRequest,
  type EarlierCar,
} from '@pullbook/tuning-math';
import { driveShapeCar, type ShapeCar, type ShapeDrive, type ShapePull } from '@pullbook/practice-car';

/** Code of a stop by hand that may be a fault. */
export const ODD_READING = 'odd-reading';

/** Any way of choosing the next duty from what a tuner can see. */
export type Method = (request: DutyAdviceRequest) => {
  readonly action: DutyAction;
  readonly duty: number | null;
  /** Quantiles of the next peak at `duty`, kPa gauge, for the asked shares. */
  readonly quantilesKpa?: (shares: readonly number[]) => readonly number[];
  readonly code?: string | undefined;
};

/** How one car's tuning went, without the car (which holds functions and cannot be sent to another thread). */
export interface CarlessRun {
  readonly pulls: readonly ShapePull[];
  /** Quantiles of each pull's peak as foretold before it, at `RANGE_ENDS`; empty where they were not asked for. */
  readonly foretold: readonly (readonly number[])[];
  readonly end: 'accept' | 'stop' | 'gave-up';
  readonly code: string;
  readonly acceptedDuty: number | null;
  /** True mean at the accepted duty, as hot as the car was then. */
  readonly acceptedMeanKpa: number | null;
  /** Whether a setting makes the target within the tolerance, as hot as the car was at the end. */
  readonly isReachable: boolean;
  /** How often the car was looked over for a fault that was not there. */
  readonly looksInVain: number;
  /** Pulls that broke the step limit, the range or the grid. */
  readonly violations: number;
  readonly decisionsMs: readonly number[];
}

export interface TuningRun extends CarlessRun {
  readonly car: ShapeCar;
}

export const STEP_LIMIT = 10;
export const RISK_LIMIT = 0.02;
/** A method that has not ended by then has given up. */
const MOST_PULLS = 60;

/** Lower and upper ends of the ranges that hold 50, 80 and 95 % of next peaks. */
export const RANGE_ENDS: readonly number[] = [0.25, 0.75, 0.1, 0.9, 0.025, 0.975];

/** What else is to be noted of a run. */
export interface TuneOptions {
  /** Whether to note `foretold`, which takes about as long as the decisions do. */
  readonly foretell?: boolean;
  /** Cars of this build that are on record. */
  readonly earlierCars?: readonly EarlierCar[];
}

/** Tunes one practice car by one method, from the cold first pull to an accept or a stop. */
export function tuneCar(car: ShapeCar, method: Method, options: TuneOptions = {}): CarlessRun {
  const drive = driveShapeCar(car);
  const notes: Notes = { pulls: [], foretold: [], decisionsMs: [], violations: 0, looksInVain: 0 };
  const { pulls } = notes;
  let soundPulls = 0;
  const ended = () => ({ ...notes, isReachable: isReachableNow(car, drive) });
  while (pulls.length < MOST_PULLS) {
    const start = performance.now();
    const answer = method({ ...requestOf(car, pulls), soundPulls, earlierCars: options.earlierCars });
    notes.decisionsMs.push(performance.now() - start);
    const { duty, code = '' } = answer;
    if (soundPulls < pulls.length && isFoundSound(car, pulls, code)) {
      notes.looksInVain += 1;
      soundPulls = pulls.length;
      continue;
    }
    if (duty === null) return { ...ended(), ...NOT_ACCEPTED, end: 'stop', code };
    if (answer.action === 'accept') {
      const acceptedMeanKpa = drive.meanNowKpa(duty);
      return { ...ended(), end: 'accept', code, acceptedDuty: duty, acceptedMeanKpa };
    }
    if (breaksRules(car, pulls, duty)) notes.violations += 1;
    if (options.foretell) notes.foretold.push(foretell(answer));
    pulls.push(drive.pull(duty));
  }
  return { ...ended(), ...NOT_ACCEPTED, end: 'gave-up', code: '' };
}

/**
 * Stops after which a tuner looks the car over. The look finds a fault that is there, and ends the run; where there is
 * none, the work goes on with the pulls as they are.
 */
const MAY_BE_A_FAULT: ReadonlySet<string> = new Set([...FAULT_CODES, ODD_READING]);

/** Whether somebody looks the car over for a fault that this code tells of, and finds none. */
function isFoundSound({ truth }: ShapeCar, pulls: readonly ShapePull[], code: string): boolean {
  const hasFault = truth.fault !== null && pulls.length > truth.fault.fromPull;
  return MAY_BE_A_FAULT.has(code) && !hasFault;
}

function isReachableNow({ controller, goal }: ShapeCar, drive: ShapeDrive): boolean {
  return dutyGrid(controller).some(
    (duty) => Math.abs(drive.meanNowKpa(duty) - goal.targetKpa) <= goal.toleranceKpa,
  );
}

/** What is written down while a run goes on. */
interface Notes {
  readonly pulls: ShapePull[];
  readonly foretold: (readonly number[])[];
  readonly decisionsMs: number[];
  violations: number;
  looksInVain: number;
}

function foretell({ quantilesKpa }: ReturnType<Method>): readonly number[] {
  return quantilesKpa ? quantilesKpa(RANGE_ENDS) : [];
}

const NOT_ACCEPTED = { acceptedDuty: null, acceptedMeanKpa: null };

/** What a tuner knows of a car once these pulls are made. */
export function requestOf(car: ShapeCar, pulls: readonly ShapePull[]): DutyAdviceRequest {
  return {
    controller: car.controller,
    goal: car.goal,
    baseKpa: car.baseKpa,
    stepLimit: STEP_LIMIT,
    riskLimit: RISK_LIMIT,
    pulls: pulls.map(({ duty, peakKpa }) => ({ duty, peakKpa })),
  };
}

function breaksRules({ controller }: ShapeCar, pulls: readonly ShapePull[], duty: number): boolean {
  const highest = Math.max(controller.dutyMin, ...pulls.map((pull) => pull.duty));
  const steps = (duty - controller.dutyMin) / controller.dutyStep;
  return (
    duty > highest + STEP_LIMIT + 1e-9 ||
    duty > controller.dutyMax ||
    duty < controller.dutyMin ||
    Math.abs(steps - Math.round(steps)) > 1e-6
  );
}
