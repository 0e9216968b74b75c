import { chanceAccepted } from './chance-accepted.js';
import {
  MISS_SHARE,
  PULLS_PER_RISK_LIMIT,
  RISK_POWER,
  RISK_SHARE,
  USUAL_EXCESS,
} from './decision-settings.js';
import { sameDuty } from './duty-grid.js';
import { chanceInside, chanceOverCeiling, excessOverCeiling, type DutySituation } from './duty-situation.js';
import { highestWithinRisk } from './highest-within-risk.js';
import { predictPeak } from './predict-peak.js';
import { stepsLeft } from './steps-left.js';

/** Settings this far below the highest allowed one are looked at, % duty, and first at this distance. */
const LOOK_BELOW = 14;
const FIRST_LOOK = 0.5;

/**
 * Position in the grid of the setting whose pull is expected to cost least, up to `top` and within the risk limit:
 * a pull costs what it is expected to pass the ceiling by (weighed in pulls), the chance that it misses the tolerance or does not
 * suffice for an accept, and the steps that then remain. Null if no setting keeps to the risk limit.
 *
 * @param top highest position that the step limit allows
 * Cost: some 15 predictions.
 * Source: expected cost one step ahead; DeGroot, Optimal Statistical Decisions (1970), ch. 12. The weights are common
 * practice, no source, measured in docs/bench/advice.md.
 */
export function chooseDuty(situation: DutySituation, top: number): number | null {
  const { grid, riskLimit, request } = situation;
  const highest = highestWithinRisk(situation, top, RISK_SHARE * riskLimit);
  if (chanceOverCeiling(situation, grid[highest] as number) > riskLimit) return null;
  const costs = new Map<number, number>();
  const left = stepsLeft(situation);
  let best = highest;
  const consider = (index: number): void => {
    if (index < 0 || index > highest) return;
    if (costAt(situation, { index, left, costs }) < costAt(situation, { index: best, left, costs }) - 1e-9)
      best = index;
  };
  const stride = Math.max(1, Math.round(FIRST_LOOK / request.controller.dutyStep));
  const looks = Math.ceil(LOOK_BELOW / (stride * request.controller.dutyStep));
  // The same settings are looked at whatever the highest one allowed is.
  const first = Math.floor(highest / stride);
  for (let look = 0; look < looks; look += 1) consider((first - look) * stride);
  for (const index of pulledPositions(situation)) consider(index);
  refine(stride, () => best, consider);
  return best;
}

interface Question {
  readonly index: number;
  readonly left: (duty: number) => number;
  readonly costs: Map<number, number>;
}

function costAt(situation: DutySituation, { index, left, costs }: Question): number {
  const known = costs.get(index);
  if (known !== undefined) return known;
  const duty = situation.grid[index] as number;
  const mixture = predictPeak(situation.thin, duty);
  const share = excessOverCeiling(situation, duty) / (USUAL_EXCESS * situation.riskLimit);
  const risk = PULLS_PER_RISK_LIMIT * share ** RISK_POWER;
  const inside = chanceInside(mixture, situation.levels);
  const miss = MISS_SHARE * (1 - inside);
  const insufficient = (1 - MISS_SHARE) * (1 - chanceAccepted(mixture, situation.levels));
  const cost = risk + miss + insufficient + left(duty);
  costs.set(index, cost);
  return cost;
}

function pulledPositions({ grid, request }: DutySituation): number[] {
  const positions: number[] = [];
  grid.forEach((duty, index) => {
    if (request.pulls.some((pull) => sameDuty(pull.duty, duty))) positions.push(index);
  });
  return positions;
}

/** Looks around the best so far at half the distance each time, then walks on setting by setting. */
function refine(stride: number, best: () => number, consider: (index: number) => void): void {
  for (let around = Math.floor(stride / 2); around > 1; around = Math.floor(around / 2)) {
    const centre = best();
    consider(centre - around);
    consider(centre + around);
  }
  for (let centre = -1; centre !== best();) {
    centre = best();
    consider(centre - 1);
    consider(centre + 1);
  }
}
