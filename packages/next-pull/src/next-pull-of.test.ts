import type { AdviceBasis } from '@pullbook/contracts';
import { describe, expect, it } from 'vitest';
import type { AdvicePull } from './advise-preset.js';
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
  foundSoundAt: null,
});
/** The same pull, after which the car was looked over and found sound. */
const sound = (one: AdvicePull): AdvicePull => ({ ...one, foundSoundAt: '2026-11-30T10:00:00.000Z' });
const soared = [pull(1, 10, 56), pull(2, 20, 56.5), pull(3, 30, 57), pull(4, 40, 190)];

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

describe('nextPullOf on a car that was looked over and found sound', () => {
  const marked = [...soared.slice(0, 3), ...soared.slice(3).map(sound)];

  it('goes on where it had stopped, with step and risk as ever, and says so', () => {
    expect(nextPullOf(basis, soared)).toMatchObject({
      foundSoundAfterPull: null,
      advice: { action: 'stop', reasons: [{ code: 'peak-soared' }] },
    });
    const { advice, foundSoundAfterPull, restsOnPulls } = nextPullOf(basis, marked);
    expect(advice?.action).toBe('pull');
    expect(advice?.duty).toBeLessThan(40);
    expect(advice?.prediction?.probabilityOverCeiling).toBeLessThanOrEqual(basis.rules.riskLimit);
    expect(advice?.reasons.map(({ code }) => code)).toContain('found-sound');
    expect({ foundSoundAfterPull, restsOnPulls }).toEqual({
      foundSoundAfterPull: 4,
      restsOnPulls: [1, 2, 3, 4],
    });
  });

  it('stops again at the next pull that shows a fault', () => {
    const again = [...marked, pull(5, 31, 60), pull(6, 31, 61), pull(7, 31, 185)];
    expect(nextPullOf(basis, again).advice).toMatchObject({
      action: 'stop',
      reasons: [{ code: 'peak-soared' }],
    });
  });

  it('takes a mark on a pull that does not count for those before it', () => {
    const unusable = sound(pull(5, 40, 60, false));
    const told = nextPullOf(basis, [...soared, unusable]);
    expect(told).toMatchObject({ foundSoundAfterPull: 5, advice: { action: 'pull' } });
    const atOtherHold = sound({ ...pull(5, 30, 90), holdPct: 60 });
    const atHold = soared.map((one) => ({ ...one, holdPct: 40 }));
    expect(nextPullOf(basis, [...atHold, atOtherHold]).advice?.action).toBe('pull');
  });

  it('is stopped by a fault that shows after the look at the car', () => {
    const early = [...soared.slice(0, 2), ...soared.slice(2, 3).map(sound), ...soared.slice(3)];
    expect(nextPullOf(basis, early).advice).toMatchObject({
      action: 'stop',
      reasons: [{ code: 'peak-soared' }],
    });
  });

  it('reads as unmarked what an older device wrote down without the field', () => {
    const old = soared.map((one) => ({ ...one, foundSoundAt: undefined }));
    expect(nextPullOf(basis, old).foundSoundAfterPull).toBeNull();
  });
});
