import { describe, expect, it } from 'vitest';
import { defendedWeights } from './defended-weights.js';

/** Three curves: the first fits all pulls, the second all but the doubted one, the third none. */
const logFits = Float64Array.from([-1, -9, -60]);
const doubtedLogs = Float64Array.from([-0.5, -9, -1]);

describe('defendedWeights(fits, withoutDoubted)', () => {
  it('gives shares that sum to 1', () => {
    const weights = defendedWeights({ logFits, doubtedLogs }, 0.3);
    expect(weights.reduce((sum, weight) => sum + weight, 0)).toBeCloseTo(1, 12);
  });

  it('is the mixture of fits to all pulls and to all but the doubted one', () => {
    const all = Math.exp(-9) / (Math.exp(-1) + Math.exp(-9));
    const allButDoubted = 1 / (Math.exp(-0.5) + 1);
    const [, second] = defendedWeights({ logFits, doubtedLogs }, 0.3);
    expect(second).toBeCloseTo(0.7 * all + 0.3 * allButDoubted, 12);
  });

  it('weighs by all pulls alone where no part is to go without the doubted one', () => {
    const [first, second, third] = defendedWeights({ logFits, doubtedLogs }, 0);
    expect((second ?? NaN) / (first ?? NaN)).toBeCloseTo(Math.exp(-8), 12);
    expect(third).toBe(0);
  });

  it('leaves out hopeless curves', () => {
    const hopeless = Float64Array.from([-1, -Infinity]);
    expect([...defendedWeights({ logFits: hopeless, doubtedLogs: new Float64Array(2) }, 0.3)]).toEqual([
      1, 0,
    ]);
  });
});
