import { TABLE_POINTS } from './tabulate-curves.js';
import type { Particles } from './draw-particles.js';
import type { Explanations } from './collect-explanations.js';
import { LEAST_SPAN } from './tabulated-rise.js';

/** The curves of the explanations, each once, laid out for being read at many duties. */
export interface ExplainedCurves {
  readonly count: number;
  readonly rises: Float32Array;
  /** Where the table row begins. */
  readonly starts: Int32Array;
  readonly shifts: Float64Array;
  /** Peak over target at zero duty, and what a whole rise adds. */
  readonly floors: Float64Array;
  readonly gains: Float64Array;
  /** Which of the curves is that of an explanation. */
  readonly curveOf: Int32Array;
  /** Where an explanation's spreads stand in a table with a row for each scatter: no false pull, then each. */
  readonly spreadPlaces: Int32Array;
}

/** Lays the curves of the explanations out. O(explanations + particles). */
export function explainedCurves(
  particles: Particles,
  { count, particles: chosen, scatters, falsePulls }: Explanations,
  pullCount: number,
): ExplainedCurves {
  const positions = new Int32Array(particles.count).fill(-1);
  const found: number[] = [];
  const curveOf = new Int32Array(count);
  const spreadPlaces = new Int32Array(count);
  for (let row = 0; row < count; row += 1) {
    const particle = chosen[row] as number;
    if (positions[particle] === -1) positions[particle] = found.push(particle) - 1;
    curveOf[row] = positions[particle] as number;
    spreadPlaces[row] = (scatters[row] as number) * (pullCount + 1) + (falsePulls[row] as number) + 1;
  }
  const floors = Float64Array.from(found, (particle) => particles.floors[particle] as number);
  const scales = Float64Array.from(found, (particle) => particles.riseScales[particle] as number);
  return {
    count: found.length,
    rises: particles.library.rises,
    starts: Int32Array.from(found, (particle) => (particles.rows[particle] as number) * TABLE_POINTS),
    shifts: Float64Array.from(found, (particle) => particles.shifts[particle] as number),
    floors,
    gains: floors.map((floor, curve) => Math.max(1 - floor, LEAST_SPAN) * (scales[curve] as number)),
    curveOf,
    spreadPlaces,
  };
}

const LAST = TABLE_POINTS - 1.000001;

/** Logs of peak over target of the curves at a duty; the same figures as those of `particleLogs`. O(curves). */
export function explainedLogs(curves: ExplainedCurves, duty: number): Float64Array {
  const { count, rises, starts, shifts, floors, gains } = curves;
  const logs = new Float64Array(count);
  for (let curve = 0; curve < count; curve += 1) {
    const moved = duty - (shifts[curve] as number);
    const bounded = moved <= 0 ? 0 : moved >= TABLE_POINTS - 1 ? LAST : moved;
    const index = Math.floor(bounded);
    const at = (starts[curve] as number) + index;
    const low = rises[at] as number;
    const rise = low + ((rises[at + 1] as number) - low) * (bounded - index);
    logs[curve] = Math.log((floors[curve] as number) + (gains[curve] as number) * rise);
  }
  return logs;
}
