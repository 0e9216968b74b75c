import { TABLE_POINTS } from './tabulate-curves.js';
import type { Particles } from './draw-particles.js';
import type { Explanations } from './explain-pulls.js';
import { LEAST_SPAN } from './tabulated-rise.js';

/** The curve of each explanation, laid out for being read at many duties. */
export interface ExplainedCurves {
  readonly rises: Float32Array;
  /** Where the table row begins. */
  readonly starts: Int32Array;
  readonly shifts: Float64Array;
  /** Peak over target at zero duty, and what a whole rise adds. */
  readonly floors: Float64Array;
  readonly gains: Float64Array;
  /** Where an explanation's spreads stand in a table with a row for each scatter: no false pull, then each. */
  readonly spreadPlaces: Int32Array;
}

/** Lays the curves of the explanations out. O(explanations). */
export function explainedCurves(
  particles: Particles,
  { count, particles: chosen, scatters, falsePulls }: Explanations,
  pullCount: number,
): ExplainedCurves {
  const curves = {
    rises: particles.library.rises,
    starts: new Int32Array(count),
    shifts: new Float64Array(count),
    floors: new Float64Array(count),
    gains: new Float64Array(count),
    spreadPlaces: new Int32Array(count),
  };
  for (let row = 0; row < count; row += 1) {
    const particle = chosen[row] as number;
    const floor = particles.floors[particle] as number;
    curves.starts[row] = (particles.rows[particle] as number) * TABLE_POINTS;
    curves.shifts[row] = particles.shifts[particle] as number;
    curves.floors[row] = floor;
    curves.gains[row] = Math.max(1 - floor, LEAST_SPAN) * (particles.riseScales[particle] as number);
    curves.spreadPlaces[row] = (scatters[row] as number) * (pullCount + 1) + (falsePulls[row] as number) + 1;
  }
  return curves;
}

const LAST = TABLE_POINTS - 1.000001;

/** Peak over target of one explanation's curve at a duty; the same figure as `particleRatio`. */
export function explainedRatio(curves: ExplainedCurves, row: number, duty: number): number {
  const moved = duty - (curves.shifts[row] as number);
  const bounded = moved <= 0 ? 0 : moved >= TABLE_POINTS - 1 ? LAST : moved;
  const index = Math.floor(bounded);
  const at = (curves.starts[row] as number) + index;
  const low = curves.rises[at] as number;
  const rise = low + ((curves.rises[at + 1] as number) - low) * (bounded - index);
  return (curves.floors[row] as number) + (curves.gains[row] as number) * rise;
}
