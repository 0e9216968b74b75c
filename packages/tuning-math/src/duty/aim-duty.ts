import { sameDuty } from './duty-grid.js';
import { chanceInside, type DutySituation } from './duty-situation.js';
import { chanceMeanBelow, predictPeak } from './predict-peak.js';

/** Below this chance of being inside the tolerance, the target is still far and the middle guess is the aim. */
const NEAR_CHANCE = 0.3;
/** A duty already pulled is preferred if it is worse by no more than this. */
const PULLED_BONUS = 0.03;
/** First look over the range, % duty. */
const STRIDE = 4;

/** The setting that is most likely to make the target. */
export interface Aim {
  readonly duty: number;
  /** Chance that the mean peak there is inside the tolerance. */
  readonly chance: number;
}

/** Where the target lies by all that is known, whatever the step, risk and ceiling rules allow. */
export function aimDuty(situation: DutySituation): Aim {
  const looked = new Map<number, Look>();
  const look = (index: number): Look => {
    const known = looked.get(index);
    if (known) return known;
    const fresh = lookAt(situation, index);
    looked.set(index, fresh);
    return fresh;
  };
  const last = situation.grid.length - 1;
  const stride = Math.max(1, Math.round(STRIDE / situation.request.controller.dutyStep));
  for (let index = 0; index < last; index += stride) look(index);
  look(last);
  for (const index of pulledSettings(situation)) look(index);
  const best = climb(bestOf(looked), last, look);
  if (best.chance >= NEAR_CHANCE) return { duty: best.duty, chance: best.chance };
  return middleCrossing(situation, look);
}

interface Look {
  readonly index: number;
  readonly duty: number;
  readonly chance: number;
  readonly worth: number;
  readonly below: number;
}

function lookAt(situation: DutySituation, index: number): Look {
  const duty = situation.grid[index] ?? 0;
  const mixture = predictPeak(situation.thin, duty);
  const chance = chanceInside(mixture, situation.levels);
  const pulled = situation.request.pulls.some((pull) => sameDuty(pull.duty, duty));
  return {
    index,
    duty,
    chance,
    worth: chance + (pulled ? PULLED_BONUS : 0),
    below: chanceMeanBelow(mixture, 0),
  };
}

function pulledSettings({ grid, request }: DutySituation): number[] {
  const found: number[] = [];
  grid.forEach((duty, index) => {
    if (request.pulls.some((pull) => sameDuty(pull.duty, duty))) found.push(index);
  });
  return found;
}

function bestOf(looked: ReadonlyMap<number, Look>): Look {
  let best: Look | undefined;
  for (const look of looked.values()) if (!best || look.worth > best.worth) best = look;
  return best ?? { index: 0, duty: 0, chance: 0, worth: 0, below: 1 };
}

/** Walks from the best of the first look to the best setting around it. */
function climb(from: Look, last: number, look: (index: number) => Look): Look {
  let best = from;
  for (const direction of [-1, 1]) {
    let misses = 0;
    for (let index = from.index + direction; index >= 0 && index <= last && misses < 3; index += direction) {
      const next = look(index);
      if (next.worth > best.worth) best = next;
      else misses += 1;
    }
  }
  return best;
}

/** Highest setting at which the mean is as likely below the target as above it. */
function middleCrossing({ grid }: DutySituation, look: (index: number) => Look): Aim {
  let low = 0;
  let high = grid.length - 1;
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if (look(middle).below >= 0.5) low = middle;
    else high = middle - 1;
  }
  const { duty, chance } = look(low);
  return { duty, chance };
}
