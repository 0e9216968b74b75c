import type { CurveLibrary } from './tabulate-curves.js';
import { STEEPEST_RISE, STEEPEST_RISE_SPREAD, WHOLE_RISE, WHOLE_RISE_SPREAD } from './response-settings.js';
import { LEAST_SPAN } from './tabulated-rise.js';

const WHOLE_CENTRE = Math.log(WHOLE_RISE);
const STEEP_CENTRE = Math.log(STEEPEST_RISE);

/**
 * Log prior density, without the constant, of how far and how steeply a curve rises in units of its floor. Where the
 * target lies close to the base boost it says that a curve which makes the target soon goes on far beyond it; where
 * the target lies far above, that there is little more to come.
 */
export function sizePenalty(library: CurveLibrary, row: number, floor: number): number {
  return -2.5 * Math.log(sizeMisfit(library, row, floor));
}

/** What `sizePenalty` is a power of: two Student t densities with 4 degrees of freedom. */
export function sizeMisfit({ logWholes, logSteepest }: CurveLibrary, row: number, floor: number): number {
  const scale = Math.log(Math.max(1 - floor, LEAST_SPAN) / floor);
  const whole = ((logWholes[row] as number) + scale - WHOLE_CENTRE) / WHOLE_RISE_SPREAD;
  const steep = ((logSteepest[row] as number) + scale - STEEP_CENTRE) / STEEPEST_RISE_SPREAD;
  return (1 + (whole * whole) / 4) * (1 + (steep * steep) / 4);
}
