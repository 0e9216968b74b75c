import type { DutySituation } from './duty-situation.js';
import { chanceMeanBelow, predictPeak } from './predict-peak.js';

/** A usual step up, % duty: the asked step limit only says which settings are allowed. */
const STEP = 10;
/** Distance between the duties at which the response is looked at, %. */
const STRIDE = 4;

/**
 * Expected steps that remain after a pull at a duty and the step that follows it: how far the target lies beyond
 * that, in steps of ten points. The mean of a distance is the integral of the chance that the target lies further.
 *
 * @returns a function of duty, %; in pulls
 * Cost: one prediction by the thin posterior for each 4 % of duty still ahead.
 */
export function stepsLeft({ thin, grid, pulls }: DutySituation): (duty: number) => number {
  const last = grid[grid.length - 1] as number;
  const highest = pulls.duties.reduce((most, duty) => Math.max(most, duty), grid[0] as number);
  const from = Math.min(highest, last - 1e-6);
  const count = Math.max(1, Math.ceil((last - from) / STRIDE));
  const width = (last - from) / count;
  const further = Array.from({ length: count + 1 }, (_, knot) =>
    chanceMeanBelow(predictPeak(thin, from + knot * width), 0),
  );
  const beyond = integralsToEnd(further, width);
  return (duty) => {
    const position = Math.min(Math.max((duty + STEP - from) / width, 0), count);
    const knot = Math.min(Math.floor(position), count - 1);
    const [low = 0, high = 0] = [beyond[knot], beyond[knot + 1]];
    return (low + (high - low) * (position - knot)) / STEP;
  };
}

/** Trapezoid sums from each knot to the last. */
function integralsToEnd(values: readonly number[], width: number): number[] {
  const sums = values.map(() => 0);
  for (let knot = values.length - 2; knot >= 0; knot -= 1) {
    const step = (((values[knot] ?? 0) + (values[knot + 1] ?? 0)) / 2) * width;
    sums[knot] = (sums[knot + 1] ?? 0) + step;
  }
  return sums;
}
