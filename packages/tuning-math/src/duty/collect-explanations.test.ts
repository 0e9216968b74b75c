import { describe, expect, it } from 'vitest';
import { collect, emptyCollection, fewExplanations, weighCollected } from './collect-explanations.js';

const NONE_FALSE = new Set<number>();
const DOUBTED = 3;

/** Explanations of like weight with no pull false, and rare ones that take the doubted pull as false. */
function collected(plain: number, rare: number, rareLog: number) {
  const all = emptyCollection(4, -Infinity);
  for (let source = 0; source < plain; source += 1) collect(all, source, -1, 0);
  for (let source = 0; source < rare; source += 1) collect(all, source, DOUBTED, rareLog);
  return all;
}

describe('fewExplanations(collected, weights, doubted)', () => {
  it('tells the rare case that the doubted pull is false by many, with the weight that it has', () => {
    const all = collected(4000, 1000, -4);
    const { weights, falseChances } = weighCollected(all, DOUBTED + 1, NONE_FALSE);
    const few = fewExplanations(all, weights, DOUBTED);
    const rows = [...few.falsePulls.keys()].filter((row) => few.falsePulls[row] === DOUBTED);
    const share = rows.reduce((sum, row) => sum + (few.weights[row] ?? NaN), 0);
    expect(rows.length).toBeGreaterThan(150);
    expect(share).toBeCloseTo(falseChances[DOUBTED] ?? NaN, 12);
    expect(few.weights.reduce((sum, weight) => sum + weight, 0)).toBeCloseTo(1, 12);
    expect(few.count).toBeLessThan(1000);
  });

  it('does without either kind where there is none of it', () => {
    for (const [plain, rare] of [
      [50, 0],
      [0, 50],
    ] as const) {
      const all = collected(plain, rare, 0);
      const { weights } = weighCollected(all, DOUBTED + 1, NONE_FALSE);
      const few = fewExplanations(all, weights, DOUBTED);
      expect(few.count).toBe(50);
      expect(few.weights.reduce((sum, weight) => sum + weight, 0)).toBeCloseTo(1, 12);
    }
  });

  it('leaves none out for want of room, whichever came first', () => {
    expect(collected(5000, 3000, 0).count).toBe(8000);
  });
});
