import { describe, expect, it } from 'vitest';
import { drawParticles } from './draw-particles.js';
import { PARTICLE_COUNT } from './response-settings.js';
import { scalePulls } from './scaled-pulls.js';

const goal = { targetKpa: 140, toleranceKpa: 3, ceilingKpa: 155 };

/** Pulls of a car that rises in a straight line, two at each duty. */
function straightPulls(count: number) {
  const pulls = Array.from({ length: count }, (_, index) => {
    const duty = 5 + 5 * Math.floor(index / 2);
    return { duty, peakKpa: 60 + 80 * (duty / 60) };
  });
  return scalePulls(pulls, { goal, baseKpa: 60 });
}

describe('drawParticles(pulls)', () => {
  it('draws all curves that are asked for with few pulls, and fewer beyond eight, down to a tenth', () => {
    expect(drawParticles(straightPulls(8)).count).toBe(PARTICLE_COUNT);
    expect(drawParticles(straightPulls(16)).count).toBe(PARTICLE_COUNT / 4);
    expect(drawParticles(straightPulls(20)).count).toBe(0.16 * PARTICLE_COUNT);
    expect(drawParticles(straightPulls(40)).count).toBe(PARTICLE_COUNT / 10);
  });

  it('draws in the order of the library, each curve as often as its weight says', () => {
    const { rows, logCorrections } = drawParticles(straightPulls(12));
    expect([...rows]).toEqual([...rows].sort((one, other) => one - other));
    expect(new Set(rows).size).toBeLessThan(rows.length);
    expect([...logCorrections].every(Number.isFinite)).toBe(true);
  });

  it('keeps curves that only the prior of a build speaks for', () => {
    const pulls = straightPulls(12);
    const { rows, library } = drawParticles(pulls);
    const drawn = new Set(rows);
    const logPrior = Float64Array.from({ length: library.count }, (_, row) => (drawn.has(row) ? -60 : 0));
    const withPrior = drawParticles(pulls, { logPrior });
    expect(withPrior.count).toBe(rows.length);
    expect([...withPrior.rows].some((row) => drawn.has(row))).toBe(false);
  });
});
