import type { DutyAction, DutyAdviceRequest, PeakPrediction } from '@pullbook/tuning-math';
import { driveShapeCar, type ShapeCar, type ShapePull } from '@pullbook/practice-car';

/** Any way of choosing the next duty from what a tuner can see. */
export type Method = (request: DutyAdviceRequest) => {
  readonly action: DutyAction;
  readonly duty: number | null;
  readonly prediction?: PeakPrediction | null;
  readonly code?: string | undefined;
};

/** How one car's tuning went, without the car (which holds functions and cannot be sent to another thread). */
export interface CarlessRun {
  readonly pulls: readonly ShapePull[];
  /** Predicted range before each pull, where the method gives one. */
  readonly predictions: readonly (PeakPrediction | null)[];
  readonly end: 'accept' | 'stop' | 'gave-up';
  readonly code: string;
  readonly acceptedDuty: number | null;
  /** True mean at the accepted duty, as hot as the car was then. */
  readonly acceptedMeanKpa: number | null;
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

/** Tunes one practice car by one method, from the cold first pull to an accept or a stop. */
export function tuneCar(car: ShapeCar, method: Method): CarlessRun {
  const drive = driveShapeCar(car);
  const pulls: ShapePull[] = [];
  const predictions: (PeakPrediction | null)[] = [];
  const decisionsMs: number[] = [];
  let violations = 0;
  const finish = (end: CarlessRun['end'], code: string, duty: number | null): CarlessRun => ({
    pulls,
    predictions,
    end,
    code,
    acceptedDuty: duty,
    acceptedMeanKpa: duty === null ? null : drive.meanNowKpa(duty),
    violations,
    decisionsMs,
  });
  while (pulls.length < MOST_PULLS) {
    const start = performance.now();
    const answer = method(requestOf(car, pulls));
    decisionsMs.push(performance.now() - start);
    if (answer.action === 'stop' || answer.duty === null) return finish('stop', answer.code ?? '', null);
    if (answer.action === 'accept') return finish('accept', answer.code ?? '', answer.duty);
    if (breaksRules(car, pulls, answer.duty)) violations += 1;
    pulls.push(drive.pull(answer.duty));
    predictions.push(answer.prediction ?? null);
  }
  return finish('gave-up', '', null);
}

function requestOf(car: ShapeCar, pulls: readonly ShapePull[]): DutyAdviceRequest {
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
