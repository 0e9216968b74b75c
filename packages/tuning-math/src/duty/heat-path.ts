import type { DutyPull } from './duty-advice-types.js';

/** Heat soak that counts as one full soak, °C of charge air above the first pull; common practice, no source. */
const FULL_SOAK_C = 25;
/** Share of the way to full soak that one pull takes where no temperature is known; common practice, no source. */
const SOAK_PER_PULL = 0.18;
/** Time in which a resting car loses most of its soak, s; common practice, no source. */
const COOLING_S = 900;
/** A rest this short counts as 'straight on'. */
const STRAIGHT_ON_S = 120;

/**
 * How soaked with heat the car was at each pull, 0 cold to about 1 soaked through, and at the next pull (last
 * entry). From `heatSoakC` where it is given, else counted up pull by pull and down over rests.
 *
 * @returns `pulls.length + 1` numbers
 */
export function heatPath(pulls: readonly DutyPull[]): number[] {
  const path: number[] = [];
  let soak = 0;
  for (const pull of pulls) {
    const rest = Math.max((pull.secondsSincePrevious ?? 0) - STRAIGHT_ON_S, 0);
    soak *= Math.exp(-rest / COOLING_S);
    if (pull.heatSoakC !== undefined) soak = pull.heatSoakC / FULL_SOAK_C;
    path.push(soak);
    if (pull.heatSoakC === undefined) soak += SOAK_PER_PULL * (1 - soak);
  }
  path.push(soak);
  return path;
}
