import { describe, expect, it } from 'vitest';
import { doubtedPull } from './doubted-pull.js';
import { scalePulls } from './scaled-pulls.js';

const goal = { targetKpa: 100, toleranceKpa: 2, ceilingKpa: 110 };
const doubted = (...pulls: [duty: number, peakKpa: number][]): number =>
  doubtedPull(
    scalePulls(
      pulls.map(([duty, peakKpa]) => ({ duty, peakKpa })),
      { goal, baseKpa: 40 },
    ),
  );

describe('doubtedPull(pulls)', () => {
  it('is the newest one, even where an earlier one at another duty read less', () => {
    expect(doubted([20, 50], [30, 48], [40, 70])).toBe(2);
  });

  it('is the lowest at the newest duty, in whatever order they came', () => {
    expect(doubted([20, 50], [40, 66], [40, 71], [40, 70])).toBe(1);
    expect(doubted([20, 50], [40, 71], [40, 70], [40, 66])).toBe(3);
  });

  it('is none where there is no pull', () => {
    expect(doubted()).toBe(-1);
  });
});
