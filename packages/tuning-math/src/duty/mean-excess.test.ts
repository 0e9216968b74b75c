import { describe, expect, it } from 'vitest';
import { meanExcess } from './mean-excess.js';
import type { PeakMixture } from './peak-mixture.js';
import { chancePeakAbove } from './predict-peak.js';

const SPREAD = 0.02;
const mixture = (parts: readonly (readonly [weight: number, centre: number])[]): PeakMixture => ({
  weights: Float64Array.from(parts, ([weight]) => weight),
  centres: Float64Array.from(parts, ([, centre]) => centre),
  places: new Int32Array(parts.length),
  meanSpreads: Float64Array.of(SPREAD / 2),
  peakSpreads: Float64Array.of(SPREAD),
});

describe('meanExcess(mixture, level)', () => {
  // Source: unit normal loss, density less level times the share above it, as tabulated in textbooks of inventory and
  // decision (four figures, from memory).
  it.each([
    [0, 0.3989],
    [0.5, 0.1978],
    [1, 0.0833],
    [2, 0.0085],
  ])('is the unit normal loss at %d spreads above the centre', (away, loss) => {
    expect(meanExcess(mixture([[1, 0]]), away * SPREAD) / SPREAD).toBeCloseTo(loss, 4);
  });

  it('is the integral of the chance of a peak above, over all levels above', () => {
    const both = mixture([
      [0.9, -0.05],
      [0.1, 0.12],
    ]);
    const [level, step] = [0.03, 1e-4];
    let sum = 0;
    for (let above = level + step / 2; above < 0.5; above += step) sum += step * chancePeakAbove(both, above);
    expect(meanExcess(both, level)).toBeCloseTo(sum, 6);
  });
});
