import { provePreset, type PresetStanding } from '@pullbook/tuning-math';
import { describe, expect, it } from 'vitest';
import { sayMissing } from './say-missing.js';

const goal = { targetKpa: 140, toleranceKpa: 4, ceilingKpa: 155 };

function standing(peaksKpa: readonly number[], hot: number): PresetStanding {
  const pulls = peaksKpa.map((peakKpa, index) => ({ peakKpa, isUsable: true, isHeatSoaked: index < hot }));
  const proof = provePreset({ goal, pulls });
  return { state: proof.state, missing: proof.missing, proof, atSettings: [] };
}

describe('sayMissing', () => {
  it('counts the pulls that are asked for, the heat-soaked one among them', () => {
    expect(sayMissing(standing([140], 0), 3)).toEqual(['2 more pulls, one of them heat-soaked']);
    expect(sayMissing(standing([140, 140.1, 140], 0), 3)).toEqual(['1 more pull, heat-soaked']);
  });

  it('says about how many the scatter asks for, and why', () => {
    const parts = sayMissing(standing([139, 141, 140], 1), 3);
    expect(parts[0]).toMatch(/^about \d+ more pulls$/);
    expect(parts[1]).toMatch(/^so far 90 % of all pulls can only be promised within/);
  });

  it('leaves it at the reason where no number of pulls helps', () => {
    const parts = sayMissing(standing([147, 147.5, 148], 1), 3);
    expect(parts).toHaveLength(1);
    expect(parts[0]).toMatch(/^the mean peak, 147.5 kPa, lies outside/);
  });

  it('is empty for what is proven', () => {
    expect(sayMissing(standing([140, 140.1, 139.9, 140, 140.1], 1), 3)).toEqual([]);
  });
});
