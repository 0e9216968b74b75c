import {
  ACCEPT_CONFIDENCE,
  dutyGrid,
  normalCdf,
  type BoostGoal,
  type DutyAdviceRequest,
} from '@pullbook/tuning-math';
import type { ShapeCar } from '@pullbook/practice-car';
import { RISK_LIMIT, STEP_LIMIT, type Method } from './tune-car.js';

/** How far the whole response may lie from where the one who knows its shape thinks it does, log. */
const LEVEL_SPREAD = 0.025;

/** What is believed of the level, log: a normal. */
interface Level {
  readonly mean: number;
  readonly variance: number;
}

/** The name of its lots. */
export const KNOWING = 'knows all but the level';

/**
 * One who knows the shape of a car's response and its scatter, and only has to learn its level: beside our
 * advice it says how much of the distance to the oracle comes from not knowing the shape. Keeps step limit, risk limit
 * and the advice's confidence; goes where the mean is most likely inside the tolerance.
 *
 * Source: a normal mean with known variance, conjugate prior (Bishop, Pattern Recognition and Machine Learning, 2.3.6).
 */
export function knowingMethod(car: ShapeCar): Method {
  const noise = car.truth.scatterRatio ** 2;
  return (request) => {
    const chances = chancesOf(car, request.goal, levelFrom(car, request.pulls));
    const { inside, overCeiling } = chances;
    const pulled = highestBy(
      request.pulls.map(({ duty }) => duty),
      inside,
    );
    if (pulled !== null && inside(pulled) >= ACCEPT_CONFIDENCE) return { action: 'accept', duty: pulled };
    const allowed = withinReach(request).filter((duty) => overCeiling(duty, noise) <= RISK_LIMIT);
    const duty = highestBy(allowed, inside);
    return { action: duty === null ? 'stop' : 'pull', duty };
  };
}

function levelFrom({ truth }: ShapeCar, pulls: DutyAdviceRequest['pulls']): Level {
  const noise = truth.scatterRatio ** 2;
  return pulls.reduce<Level>(
    ({ mean, variance }, { duty, peakKpa }) => {
      const gain = variance / (variance + noise);
      const reading = Math.log(peakKpa / truth.meanKpa(duty));
      return { mean: mean + gain * (reading - mean), variance: variance * (1 - gain) };
    },
    { mean: 0, variance: LEVEL_SPREAD ** 2 },
  );
}

function chancesOf({ truth }: ShapeCar, { targetKpa, toleranceKpa, ceilingKpa }: BoostGoal, level: Level) {
  const below = (duty: number, kpa: number, variance: number): number =>
    normalCdf((Math.log(kpa / truth.meanKpa(duty)) - level.mean) / Math.sqrt(variance));
  return {
    /** Chance that the mean is inside the tolerance. */
    inside: (duty: number): number =>
      below(duty, targetKpa + toleranceKpa, level.variance) -
      below(duty, targetKpa - toleranceKpa, level.variance),
    /** Chance that the next peak passes the ceiling. */
    overCeiling: (duty: number, noise: number): number => 1 - below(duty, ceilingKpa, level.variance + noise),
  };
}

/** Settings up to a step above the highest one pulled. */
function withinReach({ controller, pulls }: DutyAdviceRequest): number[] {
  const highest = Math.max(controller.dutyMin, ...pulls.map(({ duty }) => duty)) + STEP_LIMIT;
  return dutyGrid(controller).filter((duty) => duty <= highest + 1e-9);
}

function highestBy(duties: readonly number[], worth: (duty: number) => number): number | null {
  return duties.reduce<number | null>(
    (best, duty) => (best === null || worth(duty) >= worth(best) ? duty : best),
    null,
  );
}
