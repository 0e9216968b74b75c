import type { AdviceBasis } from '@pullbook/contracts';
import { describe, expect, it } from 'vitest';
import { nextPullOf } from './next-pull-of.js';

const basis: AdviceBasis = {
  dutyRange: { min: 0, max: 100, step: 1 },
  targetKpa: 140,
  toleranceKpa: 4,
  ceilingKpa: 155,
  gateHoldPct: null,
  provenDutyPct: null,
  baseKpa: 55,
  rules: { stepLimit: 10, riskLimit: 0.02, requiredPulls: 3 },
  missing: [],
};
const pull = (number: number, dutyPct: number, peakKpa: number, usable = true) => ({
  number,
  dutyPct,
  peakKpa,
  usable,
});

describe('nextPullOf', () => {
  it('rests on the usable pulls and stays within one step of the highest of them', () => {
    const next = nextPullOf(basis, [pull(1, 10, 62), pull(2, 20, 70), pull(3, 60, 90, false)]);
    expect(next.ready).toBe(true);
    expect(next.restsOnPulls).toEqual([1, 2]);
    expect(next.highestDutyPct).toBe(20);
    expect(next.advice?.duty).toBeGreaterThan(20);
    expect(next.advice?.duty).toBeLessThanOrEqual(30);
  });

  it('gives no advice without a ceiling, and says so', () => {
    const next = nextPullOf({ ...basis, ceilingKpa: null }, [pull(1, 10, 62)]);
    expect(next.advice).toBeNull();
    expect(next.missing).toEqual(['agree the ceiling of this preset']);
  });

  it('gives no advice while the readiness check is open, whatever was driven', () => {
    const next = nextPullOf({ ...basis, missing: ['pass the readiness check'] }, [pull(1, 10, 62)]);
    expect(next).toMatchObject({ ready: false, advice: null, missing: ['pass the readiness check'] });
  });

  it('answers the same again from the basis that it gives back', () => {
    const pulls = [pull(1, 10, 62), pull(2, 20, 71.3)];
    const next = nextPullOf(basis, pulls);
    const again = nextPullOf(JSON.parse(JSON.stringify(next.basis)) as AdviceBasis, pulls);
    expect(JSON.stringify(again)).toBe(JSON.stringify(next));
  });
});
