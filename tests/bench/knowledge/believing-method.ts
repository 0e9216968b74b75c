import { seededRandom, type RiseDraw, type ShapeCar } from '@pullbook/practice-car';
import { dutyGrid, type DutyAdviceRequest } from '@pullbook/tuning-math';
import { STEP_LIMIT, type Method } from '../advice/tune-car.js';
import { belief, guessedChanceOver, guessedMeanKpa, type Belief } from './belief.js';
import type { CarGuess } from './car-guess.js';

/** How sure and how careful a believer is. */
export interface Boldness {
  /** Confidence that an accept asks for. */
  readonly confidence: number;
  /** Chance of passing the ceiling that one pull may have. */
  readonly riskLimit: number;
}

/** What a believer takes as possible. */
export interface Believer {
  readonly formulas: readonly RiseDraw[];
  readonly perFormula: number;
  readonly boldness: Boldness;
}

/** A believer who needs more pulls than these has given up. */
const MOST_PULLS = 40;

/**
 * One who knows the formulas that cars are drawn from, and with what chances, and reckons with nothing else: accepts the
 * pulled setting that is most likely inside the tolerance once that is sure enough, else pulls where the mean is
 * expected nearest to the target, within the limits of step and risk. Deterministic for a car.
 */
export function believingMethod(car: ShapeCar, { formulas, perFormula, boldness }: Believer): Method {
  const random = seededRandom(7 * car.seed + 13);
  const believed = belief({ known: car, formulas, perFormula, random });
  return (request) => {
    believed.learn(request.pulls);
    const best = bestPulled(request, believed);
    if (best && best.chance >= boldness.confidence) return { action: 'accept', duty: best.duty };
    if (request.pulls.length >= MOST_PULLS) return { action: 'stop', duty: null };
    return { action: 'pull', duty: nearestSafe(request, believed, boldness.riskLimit) };
  };
}

interface Pulled {
  readonly duty: number;
  readonly chance: number;
}

function bestPulled({ pulls, goal }: DutyAdviceRequest, { expect }: Belief): Pulled | null {
  const hot = pulls.length - 1;
  let best: Pulled | null = null;
  for (const duty of new Set(pulls.map((pull) => pull.duty))) {
    const chance = expect((guess) => {
      const away = Math.abs(guessedMeanKpa(guess, duty, hot) - goal.targetKpa);
      return away <= goal.toleranceKpa ? 1 : 0;
    });
    if (!best || chance >= best.chance) best = { duty, chance };
  }
  return best;
}

/** Settings further below the highest pulled one are not looked at, % duty. */
const LOOK_BELOW = 25;

/** The lowest setting is always safe enough: nothing less can be asked of the car. */
function nearestSafe(
  { controller, goal, pulls }: DutyAdviceRequest,
  { expect }: Belief,
  riskLimit: number,
): number {
  const highest = Math.max(controller.dutyMin, ...pulls.map(({ duty }) => duty));
  let nearest = controller.dutyMin;
  let least = Infinity;
  for (const duty of dutyGrid(controller)) {
    if (duty < highest - LOOK_BELOW || duty > highest + STEP_LIMIT + 1e-9) continue;
    const meanOf = (guess: CarGuess) => guessedMeanKpa(guess, duty, pulls.length);
    const away = expect((guess) => Math.abs(Math.log(meanOf(guess) / goal.targetKpa)));
    if (away > least) continue;
    const risk = expect((guess) => guessedChanceOver(guess, meanOf(guess), goal.ceilingKpa));
    if (risk > riskLimit && duty > controller.dutyMin) continue;
    nearest = duty;
    least = away;
  }
  return nearest;
}
