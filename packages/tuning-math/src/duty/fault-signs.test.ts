import { describe, expect, it } from 'vitest';
import { dutySituation } from './duty-situation.js';
import { faultSigns, type FaultSigns } from './fault-signs.js';

const duties = [10, 20, 30, 40, 50, 60, 60, 60, 60, 60, 60, 60, 60];
const USUAL = [60, 66, 76, 90, 106, 124, 125.5, 123.2, 124.6, 123.8, 124.4, 124.2, 124.1];

/** Signs after these pulls, the last of which read this share of their usual peak. */
function signsWith(shares: readonly number[]): FaultSigns {
  const pulls = duties.map((duty, index) => {
    const share = shares[index - (duties.length - shares.length)] ?? 1;
    return { duty, peakKpa: share * (USUAL[index] ?? NaN) };
  });
  return faultSigns(
    dutySituation({
      controller: { dutyMin: 0, dutyMax: 100, dutyStep: 1 },
      goal: { targetKpa: 130, toleranceKpa: 3, ceilingKpa: 145 },
      baseKpa: 58,
      pulls,
    }),
  );
}

describe('faultSigns(situation)', () => {
  it('finds nothing in pulls that are in line', () => {
    expect(signsWith([1])).toMatchObject({ bothAsLow: 1, bothAsHigh: 1, threeAsLow: 1 });
  });

  it('does not judge a pull that two earlier ones show to be no less than it should be, and two no more', () => {
    expect(signsWith([1])).toMatchObject({ chanceAsLow: 1, chanceAsHigh: 1, density: Infinity });
    expect(signsWith([0.97]).chanceAsLow).toBeLessThan(0.5);
    expect(signsWith([1.03]).chanceAsHigh).toBeLessThan(0.5);
  });

  it('tells three pulls that fell from one and two', () => {
    expect(signsWith([0.86, 0.87, 0.85]).threeAsLow).toBeLessThan(0.001);
    expect(signsWith([0.86, 0.87]).threeAsLow).toBeGreaterThan(0.1);
    expect(signsWith([0.86, 0.87]).bothAsLow).toBeLessThan(0.01);
    expect(signsWith([0.86]).bothAsLow).toBeGreaterThan(0.1);
    expect(signsWith([0.86]).chanceAsLow).toBeLessThan(0.05);
  });

  it('tells two pulls that soared from one', () => {
    expect(signsWith([1.15, 1.16]).bothAsHigh).toBeLessThan(0.01);
    expect(signsWith([1.15]).bothAsHigh).toBeGreaterThan(0.1);
    expect(signsWith([1.15]).chanceAsHigh).toBeLessThan(0.01);
  });
});
