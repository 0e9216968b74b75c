import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { NotFiniteError, OutOfRangeError } from '../errors.js';
import { provePreset, type ProofPull, type ProofRequest } from './index.js';

fc.configureGlobal({ seed: 20261125 });

const goal = { targetKpa: 140, toleranceKpa: 4, ceilingKpa: 155 };
const pull = (peakKpa: number, more: Partial<ProofPull> = {}): ProofPull => ({
  peakKpa,
  isUsable: true,
  isHeatSoaked: false,
  ...more,
});
const soaked = (peakKpa: number): ProofPull => pull(peakKpa, { isHeatSoaked: true });
const steady = [pull(140.2), pull(139.6), pull(140.4), pull(139.9), pull(140.5), soaked(139.4)];
const prove = (
  pulls: readonly ProofPull[],
  more: Partial<ProofRequest> = {},
): ReturnType<typeof provePreset> => provePreset({ goal, pulls, ...more });
const gaps = (proof: ReturnType<typeof provePreset>): string[] => proof.missing.map((gap) => gap.code);

describe('provePreset', () => {
  test('is proven by steady pulls inside the tolerance, one of them heat-soaked', () => {
    const proof = prove(steady);
    expect(proof).toMatchObject({
      state: 'proven',
      isProven: true,
      missing: [],
      usablePulls: 6,
      heatSoakedPulls: 1,
    });
    expect(proof.interval?.low).toBeGreaterThanOrEqual(136);
    expect(proof.interval?.high).toBeLessThanOrEqual(144);
  });
  test('is a draft without a goal or without a pull, and says so', () => {
    expect(prove(steady, { goal: null })).toMatchObject({ state: 'draft', isProven: false });
    expect(gaps(prove(steady, { goal: null }))).toEqual(['no-goal']);
    expect(prove([])).toMatchObject({ state: 'draft', interval: null, highestPeakKpa: null });
    expect(gaps(prove([]))).toEqual(['no-pull']);
  });
  test('is on test while pulls or the heat-soaked one are missing', () => {
    const few = prove([pull(140), pull(140.3)]);
    expect(few.state).toBe('on-test');
    expect(gaps(few)).toContain('too-few-pulls');
    expect(gaps(prove(steady.map((each) => ({ ...each, isHeatSoaked: false }))))).toEqual([
      'no-heat-soaked-pull',
    ]);
    expect(
      prove(
        steady.map((each) => ({ ...each, isHeatSoaked: false })),
        { rule: { needsHeatSoaked: false } },
      ).isProven,
    ).toBe(true);
  });
  test('a single pull past the ceiling stands in the way, also one that is not usable', () => {
    const proof = prove([...steady, pull(156, { isUsable: false })]);
    expect(gaps(proof)).toEqual(['ceiling-passed']);
    expect(proof.missing[0]?.text).toContain('156.0 kPa');
    expect(proof.highestPeakKpa).toBe(156);
  });
  test('tells a mean off the target from a scatter that is too wide', () => {
    expect(gaps(prove(steady.map((each) => ({ ...each, peakKpa: each.peakKpa + 5 }))))).toEqual([
      'mean-off-target',
    ]);
    const wide = prove([pull(137), pull(142.5), pull(139), pull(143), pull(138), soaked(141)]);
    expect(gaps(wide)).toEqual(['scatter-too-wide']);
    expect(wide.pullsLikelyNeeded).toBeNull();
  });
  test('says how many pulls would do if mean and scatter stay', () => {
    const proof = prove([pull(138.6), pull(141.2), soaked(140.3)]);
    expect(gaps(proof)).toEqual(['scatter-too-wide']);
    expect(proof.pullsLikelyNeeded).toBeGreaterThan(3);
    expect(proof.pullsLikelyNeeded).toBeLessThanOrEqual(12);
  });
  test("the workshop's own repeatability lets three pulls prove what they could not alone", () => {
    const three = [pull(139.6), pull(140.4), soaked(140.1)];
    const scattered = [pull(139), pull(141), soaked(140.1)];
    expect(prove(scattered).isProven).toBe(false);
    const pooled = { sd: 1.1, degreesOfFreedom: 60 };
    expect(prove(scattered, { pooled }).isProven).toBe(true);
    expect(prove(three, { pooled: { sd: 3, degreesOfFreedom: 60 } }).isProven).toBe(false);
  });
  test('a timed override must be seen to end, in time', () => {
    const kind = 'timed-override' as const;
    expect(gaps(prove(steady, { kind, holdSeconds: 8 }))).toEqual(['override-end-not-seen']);
    const timed = (heldForS: number): ProofPull[] => steady.map((each) => ({ ...each, heldForS }));
    expect(prove(timed(8.2), { kind, holdSeconds: 8 }).isProven).toBe(true);
    expect(gaps(prove(timed(11), { kind, holdSeconds: 8 }))).toEqual(['override-holds-too-long']);
  });
  test('only pulls with the override on prove a timed override, and none of those a standing preset', () => {
    const kind = 'timed-override' as const;
    const on = steady.map((each) => ({ ...each, isOverrideOn: true, heldForS: 7.9 }));
    const off = steady.map((each) => ({ ...each, isOverrideOn: false, heldForS: 7.9 }));
    expect(prove(on, { kind, holdSeconds: 8 })).toMatchObject({ isProven: true, usablePulls: 6 });
    const without = prove(off, { kind, holdSeconds: 8 });
    expect(without).toMatchObject({ isProven: false, usablePulls: 0, interval: null });
    expect(gaps(without)).toContain('no-override-pull');
    expect(prove(off).isProven).toBe(true);
    expect(prove(on)).toMatchObject({ isProven: false, usablePulls: 0 });
    expect(prove([...steady, pull(156, { isOverrideOn: false })], { kind }).missing[0]?.code).toBe(
      'ceiling-passed',
    );
  });
  test('a workshop may do without having seen the end of an override, but not with one that lasts', () => {
    const kind = 'timed-override' as const;
    const rule = { needsOverrideEnd: false };
    expect(prove(steady, { kind, holdSeconds: 8, rule }).isProven).toBe(true);
    const long = steady.map((each) => ({ ...each, heldForS: 11 }));
    expect(gaps(prove(long, { kind, holdSeconds: 8, rule }))).toEqual(['override-holds-too-long']);
  });
  test('signed off and replaced stand above what the data say', () => {
    expect(prove(steady, { isSignedOff: true }).state).toBe('signed-off');
    expect(prove([], { isSignedOff: true, isReplaced: true }).state).toBe('replaced');
  });
  test('is never proven with the interval outside the tolerance or a peak past the ceiling', () => {
    const anyPull = fc
      .tuple(fc.double({ min: 134, max: 157, noNaN: true }), fc.boolean())
      .map(([peakKpa, isHeatSoaked]) => pull(peakKpa, { isHeatSoaked }));
    const near = fc
      .tuple(fc.double({ min: 139, max: 141, noNaN: true }), fc.boolean())
      .map(([peakKpa, isHeatSoaked]) => pull(peakKpa, { isHeatSoaked }));
    let proven = 0;
    fc.assert(
      fc.property(
        fc.array(fc.oneof({ weight: 1, arbitrary: anyPull }, { weight: 30, arbitrary: near }), {
          maxLength: 9,
        }),
        (pulls) => {
          const proof = prove(Object.freeze(pulls));
          if (!proof.isProven) return;
          proven += 1;
          expect(proof.interval?.low).toBeGreaterThanOrEqual(136);
          expect(proof.interval?.high).toBeLessThanOrEqual(144);
          expect(Math.max(...pulls.map((each) => each.peakKpa))).toBeLessThanOrEqual(155);
        },
      ),
      { numRuns: 60 },
    );
    expect(proven).toBeGreaterThan(5);
  });
  test.each([NaN, Infinity, -Infinity])('refuses a peak of %s', (bad) => {
    expect(() => prove([pull(bad)])).toThrow(NotFiniteError);
    expect(() => prove([], { goal: { ...goal, targetKpa: bad } })).toThrow('goal.targetKpa');
  });
  test('refuses a ceiling under the target and rules that make no sense', () => {
    expect(() => prove([], { goal: { ...goal, ceilingKpa: 139 } })).toThrow(OutOfRangeError);
    expect(() => prove([], { rule: { coverageRatio: 1 } })).toThrow('rule.coverageRatio');
    expect(() => prove([], { rule: { leastPulls: 0 } })).toThrow('rule.leastPulls');
    expect(() => prove([], { holdSeconds: 0 })).toThrow('holdSeconds');
  });
});
