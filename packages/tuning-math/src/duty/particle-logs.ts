import type { Particles } from './draw-particles.js';
import { peakRatio, tabulatedRise } from './tabulated-rise.js';

/** Log of peak over target of every particle at a duty; worked out once for each duty. O(particles) the first time. */
export function particleLogs(particles: Particles, duty: number): Float64Array {
  const known = particles.logs.get(duty);
  if (known) return known;
  const { rises } = particles.library;
  const logs = new Float64Array(particles.count);
  for (let index = 0; index < particles.count; index += 1) {
    const row = particles.rows[index] as number;
    const rise = tabulatedRise(rises, row, duty - (particles.shifts[index] as number));
    const moved = rise * (particles.riseScales[index] as number);
    logs[index] = Math.log(peakRatio(particles.floors[index] as number, moved));
  }
  particles.logs.set(duty, logs);
  return logs;
}
