import { NotFiniteError, OutOfRangeError } from '../errors.js';
import type {
  BoostGoal,
  DutyAdviceRequest,
  DutyController,
  DutyPull,
  EarlierCar,
} from './duty-advice-types.js';

/** Step limit where the request names none, % duty; common practice, no source. */
export const DEFAULT_STEP_LIMIT = 10;
/** Risk limit where the request names none: 1 pull in 50. */
export const DEFAULT_RISK_LIMIT = 0.02;

/** Most pulls that one request may hold; the cost grows with their square. */
export const MOST_PULLS = 200;
/** Most earlier cars of a build; more would not sharpen it further. */
export const MOST_EARLIER_CARS = 8;
/** Most settings on a controller's grid: 0 to 100 % in steps of 0.05. */
export const MOST_SETTINGS = 2001;

const FUNCTION_NAME = 'adviseDuty';
const GRID_SLACK = 1e-9;

type DutyEnds = Pick<DutyController, 'dutyMin' | 'dutyMax'>;

interface Claim {
  readonly argument: string;
  readonly value: number;
  readonly allowed: string;
}

/**
 * Refuses a request that no advice may rest on.
 *
 * @throws {NotFiniteError} where a number is NaN or infinite
 * @throws {OutOfRangeError} where a number is outside what is allowed; the argument is named by its path, as in `pulls[2].duty`
 */
export function checkDutyRequest(request: DutyAdviceRequest): void {
  checkController(request.controller);
  checkGoal(request.goal);
  checkLimits(request);
  checkCount('pulls', request.pulls.length, MOST_PULLS);
  request.pulls.forEach((pull, index) => checkPull(pull, `pulls[${index}]`, request.controller));
  checkSoundPulls(request);
  checkCount('earlierCars', request.earlierCars?.length ?? 0, MOST_EARLIER_CARS);
  request.earlierCars?.forEach((car, index) => checkEarlierCar(car, `earlierCars[${index}]`));
}

function checkSoundPulls({ soundPulls, pulls }: DutyAdviceRequest): void {
  if (soundPulls === undefined) return;
  requireThat(Number.isInteger(soundPulls) && soundPulls >= 0 && soundPulls <= pulls.length, {
    argument: 'soundPulls',
    value: soundPulls,
    allowed: `a whole number from 0 to the count of pulls (${pulls.length})`,
  });
}

/** An earlier car may have had a controller of another range. */
function checkEarlierCar({ pulls, baseKpa }: EarlierCar, path: string): void {
  checkCount(`${path}.pulls`, pulls.length, MOST_PULLS);
  pulls.forEach((pull, index) => checkPull(pull, `${path}.pulls[${index}]`, { dutyMin: 0, dutyMax: 100 }));
  checkBase(baseKpa, `${path}.baseKpa`);
}

function checkController({ dutyMin, dutyMax, dutyStep }: DutyController): void {
  requireThat(dutyMin >= 0 && dutyMin < 100, {
    argument: 'controller.dutyMin',
    value: dutyMin,
    allowed: 'in [0, 100)',
  });
  requireThat(dutyMax > dutyMin && dutyMax <= 100, {
    argument: 'controller.dutyMax',
    value: dutyMax,
    allowed: `above dutyMin (${dutyMin}) and at most 100`,
  });
  const least = (dutyMax - dutyMin) / (MOST_SETTINGS - 1);
  requireThat(dutyStep > 0 && dutyStep <= dutyMax - dutyMin && dutyStep >= least - GRID_SLACK, {
    argument: 'controller.dutyStep',
    value: dutyStep,
    allowed: `from ${least} to the controller's range (${dutyMax - dutyMin})`,
  });
}

function checkGoal({ targetKpa, toleranceKpa, ceilingKpa }: BoostGoal): void {
  requireThat(targetKpa > 0, { argument: 'goal.targetKpa', value: targetKpa, allowed: 'above 0' });
  requireThat(toleranceKpa > 0 && toleranceKpa < targetKpa, {
    argument: 'goal.toleranceKpa',
    value: toleranceKpa,
    allowed: `above 0 and below the target (${targetKpa})`,
  });
  requireThat(ceilingKpa > targetKpa, {
    argument: 'goal.ceilingKpa',
    value: ceilingKpa,
    allowed: `above the target (${targetKpa})`,
  });
}

function checkLimits({ stepLimit, riskLimit, baseKpa, controller }: DutyAdviceRequest): void {
  if (stepLimit !== undefined) {
    requireThat(stepLimit >= controller.dutyStep - GRID_SLACK && stepLimit <= 100, {
      argument: 'stepLimit',
      value: stepLimit,
      allowed: `from the controller's step (${controller.dutyStep}) to 100`,
    });
  }
  if (riskLimit !== undefined) {
    requireThat(riskLimit > 0 && riskLimit <= 0.5, {
      argument: 'riskLimit',
      value: riskLimit,
      allowed: 'in (0, 0.5]',
    });
  }
  checkBase(baseKpa, 'baseKpa');
}

function checkBase(baseKpa: number | null | undefined, argument: string): void {
  if (baseKpa === undefined || baseKpa === null) return;
  requireThat(baseKpa > 0, { argument, value: baseKpa, allowed: 'above 0, or null if unknown' });
}

function checkPull(pull: DutyPull, path: string, { dutyMin, dutyMax }: DutyEnds): void {
  requireThat(pull.duty >= dutyMin - GRID_SLACK && pull.duty <= dutyMax + GRID_SLACK, {
    argument: `${path}.duty`,
    value: pull.duty,
    allowed: `inside the controller's range, ${dutyMin} to ${dutyMax}`,
  });
  requireThat(pull.peakKpa >= 0, {
    argument: `${path}.peakKpa`,
    value: pull.peakKpa,
    allowed: 'at least 0',
  });
  if (pull.heatSoakC !== undefined) {
    requireThat(Math.abs(pull.heatSoakC) <= 200, {
      argument: `${path}.heatSoakC`,
      value: pull.heatSoakC,
      allowed: 'from -200 to 200',
    });
  }
  if (pull.secondsSincePrevious !== undefined) {
    requireThat(pull.secondsSincePrevious >= 0, {
      argument: `${path}.secondsSincePrevious`,
      value: pull.secondsSincePrevious,
      allowed: 'at least 0',
    });
  }
}

function checkCount(argument: string, count: number, most: number): void {
  requireThat(count <= most, { argument, value: count, allowed: `to hold at most ${most}` });
}

function requireThat(holds: boolean, claim: Claim): void {
  if (!Number.isFinite(claim.value)) {
    throw new NotFiniteError(FUNCTION_NAME, { ...claim, allowed: `to be finite and ${claim.allowed}` });
  }
  if (!holds) throw new OutOfRangeError(FUNCTION_NAME, claim);
}
