import { describe, expect, it } from 'vitest';
import { unitsOf } from '../units/units-of';
import { findNearTarget, sayNearTarget } from './near-target';

const preset = (slot: number, targetKpa: number | null, rest: object = {}) => ({
  slot,
  name: `Preset of slot ${slot}`,
  state: 'draft' as const,
  targetKpa,
  toleranceKpa: 4,
  ...rest,
});
const goal = { slot: 2, targetKpa: 110, toleranceKpa: 4 };

describe('findNearTarget', () => {
  it('finds a target inside the other’s tolerance, its edge counted, and none beyond it', () => {
    expect(findNearTarget(goal, [preset(1, 114)])?.slot).toBe(1);
    expect(findNearTarget(goal, [preset(1, 106)])?.slot).toBe(1);
    expect(findNearTarget(goal, [preset(1, 114.1), preset(3, 105.9)])).toBeNull();
  });

  it('goes by the wider of the two tolerances', () => {
    expect(findNearTarget(goal, [preset(1, 116, { toleranceKpa: 6 })])?.slot).toBe(1);
    expect(findNearTarget({ ...goal, toleranceKpa: 6 }, [preset(1, 116)])?.slot).toBe(1);
  });

  it('gives the nearest of several', () => {
    const presets = [preset(1, 113), preset(3, 109), preset(4, 114)];
    expect(findNearTarget(goal, presets)?.slot).toBe(3);
  });

  it('passes over its own slot, replaced presets, and what has no target yet', () => {
    const presets = [preset(2, 110), preset(1, 110, { state: 'replaced' }), preset(3, null)];
    expect(findNearTarget(goal, presets)).toBeNull();
  });

  it('asks nothing before a target is typed, and takes a tolerance that is not typed for none', () => {
    expect(findNearTarget({ ...goal, targetKpa: null }, [preset(1, 110)])).toBeNull();
    expect(findNearTarget({ ...goal, toleranceKpa: null }, [preset(1, 110)])?.slot).toBe(1);
  });
});

describe('sayNearTarget', () => {
  it('names the other preset and its target in the person’s unit', () => {
    const units = unitsOf({ pressure: 'bar', temperature: 'C' });
    expect(sayNearTarget(goal, [preset(1, 112, { name: 'Everyday' })], units)).toMatch(
      /^Preset 1 Everyday has much the same target, 1\.12.bar ± 0\.04: /u,
    );
  });

  it('says nothing where every target is its own', () => {
    expect(sayNearTarget(goal, [preset(1, 74)], unitsOf({ pressure: 'kPa', temperature: 'C' }))).toBe('');
  });
});
