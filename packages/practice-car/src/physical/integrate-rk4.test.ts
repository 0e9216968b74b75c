import { describe, expect, it } from 'vitest';
import { rungeKutta4 } from './integrate-rk4.js';

/** Step response of w^2 / (s^2 + 2 z w s + w^2) with w = 1: its greatest value and when, by parabola through the top. */
function stepResponse(damping: number, stepS: number): { overshootPct: number; peakS: number } {
  const step = rungeKutta4(2, (_timeS, state, rates) => {
    rates[0] = state[1] ?? 0;
    rates[1] = 1 - (state[0] ?? 0) - 2 * damping * (state[1] ?? 0);
  });
  const state = new Float64Array(2);
  const values = [0];
  for (let i = 0; i * stepS < 10; i++) {
    step(i * stepS, stepS, state);
    values.push(state[0] ?? 0);
  }
  const top = values.indexOf(Math.max(...values));
  const [before = 0, peak = 0, after = 0] = values.slice(top - 1, top + 2);
  const shift = (before - after) / (2 * (before - 2 * peak + after));
  return { overshootPct: 100 * (peak - ((before - after) * shift) / 4 - 1), peakS: (top + shift) * stepS };
}

describe('rungeKutta4', () => {
  // Canonical second-order step response, closed form 100 exp(-pi z / sqrt(1 - z^2)) and pi / sqrt(1 - z^2).
  it.each([
    { damping: 0.1, overshootPct: 72.925, peakS: 3.1574 },
    { damping: 0.3, overshootPct: 37.233, peakS: 3.2933 },
    { damping: 0.5, overshootPct: 16.303, peakS: 3.6276 },
    { damping: 0.7, overshootPct: 4.599, peakS: 4.3991 },
    { damping: 0.9, overshootPct: 0.152, peakS: 7.2073 },
  ])('reproduces overshoot and peak time at damping $damping', ({ damping, overshootPct, peakS }) => {
    const found = stepResponse(damping, 0.02);
    expect(Math.abs(found.overshootPct - overshootPct)).toBeLessThan(0.001);
    expect(Math.abs(found.peakS - peakS)).toBeLessThan(0.001);
  });

  it('falls in error sixteenfold when the step is halved', () => {
    const errorAt = (stepS: number): number => {
      const step = rungeKutta4(1, (_timeS, state, rates) => {
        rates[0] = -(state[0] ?? 0);
      });
      const state = Float64Array.of(1);
      for (let i = 0; i < Math.round(1 / stepS); i++) step(i * stepS, stepS, state);
      return Math.abs((state[0] ?? 0) - Math.exp(-1));
    };
    const order = Math.log2(errorAt(0.1) / errorAt(0.05));
    expect(order).toBeGreaterThan(3.9);
    expect(order).toBeLessThan(4.2);
  });
});
