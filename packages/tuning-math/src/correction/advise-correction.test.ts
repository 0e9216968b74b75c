import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { NotFiniteError, OutOfRangeError, TooFewPointsError } from '../errors.js';
import { adviseCorrection, type CorrectionPull } from './index.js';

fc.configureGlobal({ seed: 20261125 });

const controller = { strengthMin: 0, strengthMax: 50, strengthStep: 1 };
const goal = { targetKpa: 140, toleranceKpa: 4 };
const pull = (strength: number, settledKpa: number, dampingRatio?: number | null): CorrectionPull => ({
  strength,
  settledKpa,
  hunting: dampingRatio === undefined ? null : { frequencyHz: 2.2, dampingRatio, amplitudeKpa: 4 },
});
const ask = (...pulls: CorrectionPull[]): ReturnType<typeof adviseCorrection> =>
  adviseCorrection({ controller, goal, pulls });
const codes = (advice: ReturnType<typeof adviseCorrection>): string[] =>
  advice.reasons.map((reason) => reason.code);

describe('adviseCorrection', () => {
  test('keeps a strength that neither hunts nor sags', () => {
    const advice = ask(pull(20, 139.4));
    expect(advice).toMatchObject({ action: 'keep', strength: 20, frequencyHz: null, dampingRatio: null });
    expect(advice.settledErrorKpa).toBeCloseTo(-0.6, 9);
    expect(codes(advice)).toEqual(['steady']);
  });
  test('lowers a strength that hunts by the square of its damping over 0.5, at most by half', () => {
    expect(ask(pull(40, 140, 0.4))).toMatchObject({ action: 'keep' });
    const mild = ask({ ...pull(40, 140, 0.29) });
    // 40 · (0.29 / 0.5)² = 13.5, less than half of 40
    expect(mild).toMatchObject({ action: 'lower', strength: 20, dampingRatio: 0.29, frequencyHz: 2.2 });
    expect(ask(pull(40, 140, null))).toMatchObject({ action: 'lower', strength: 20, dampingRatio: 0 });
    expect(mild.reasons[0]?.text).toContain('2.2 Hz, damping ratio 0.29');
  });
  test('raises a strength that sags by a quarter at most, and never past one that hunted', () => {
    expect(ask(pull(20, 133))).toMatchObject({ action: 'raise', strength: 25 });
    expect(ask(pull(24, 140, 0.1), pull(20, 133))).toMatchObject({ action: 'raise', strength: 22 });
    expect(codes(ask(pull(20, 133)))).toEqual(['sagging']);
  });
  test('does not lower past a strength that was steady', () => {
    expect(ask(pull(18, 137), pull(22, 140, 0.1))).toMatchObject({ action: 'lower', strength: 18 });
  });
  test('stops where no strength cures both, at either end of the range', () => {
    expect(codes(ask(pull(21, 140, 0.1), pull(20, 133)))).toEqual(['hunting-and-sagging']);
    expect(codes(ask(pull(50, 133)))).toEqual(['at-highest-strength']);
    expect(codes(ask(pull(0, 140, 0.1)))).toEqual(['at-lowest-strength']);
    expect(codes(ask(pull(0, 130, 0.1)))).toEqual(['hunting-and-sagging']);
  });
  test('stops where a much lower strength has not calmed the hunting', () => {
    const advice = ask(pull(40, 140, 0.05), pull(20, 140, 0.05));
    expect(advice).toMatchObject({ action: 'stop', strength: null });
    expect(codes(advice)).toEqual(['hunting-not-from-correction']);
    expect(ask(pull(40, 140, 0.05), pull(20, 140, 0.2)).action).toBe('lower');
  });
  test('swings that are small against the tolerance do not count', () => {
    const tiny = { ...pull(20, 140), hunting: { frequencyHz: 3, dampingRatio: 0.02, amplitudeKpa: 0.5 } };
    expect(ask(tiny).action).toBe('keep');
  });
  test('always stays inside the range and on the grid', () => {
    const anyPull = fc
      .record({
        strength: fc.integer({ min: 0, max: 50 }),
        settled: fc.double({ min: 120, max: 160, noNaN: true }),
        damping: fc.option(fc.double({ min: 0, max: 1, noNaN: true }), { nil: undefined }),
      })
      .map(({ strength, settled, damping }) => pull(strength, settled, damping));
    fc.assert(
      fc.property(fc.array(anyPull, { minLength: 1, maxLength: 6 }), (pulls) => {
        const advice = adviseCorrection(Object.freeze({ controller, goal, pulls: Object.freeze(pulls) }));
        expect(advice.reasons.length).toBeGreaterThan(0);
        if (advice.strength === null) {
          expect(advice.action).toBe('stop');
          return;
        }
        expect(Number.isInteger(advice.strength)).toBe(true);
        expect(advice.strength).toBeGreaterThanOrEqual(0);
        expect(advice.strength).toBeLessThanOrEqual(50);
        const last = pulls.at(-1)?.strength ?? NaN;
        if (advice.action === 'lower') expect(advice.strength).toBeLessThan(last);
        if (advice.action === 'raise') expect(advice.strength).toBeGreaterThan(last);
      }),
    );
  });
  test('refuses no pull, NaN, infinity and a strength outside the range', () => {
    expect(() => ask()).toThrow(TooFewPointsError);
    for (const bad of [NaN, Infinity, -Infinity]) {
      expect(() => ask(pull(20, bad))).toThrow(NotFiniteError);
      expect(() => ask(pull(20, 140, bad))).toThrow('pulls[0].hunting.dampingRatio');
    }
    expect(() => ask(pull(51, 140))).toThrow(OutOfRangeError);
    expect(() =>
      adviseCorrection({ controller: { ...controller, strengthStep: 0 }, goal, pulls: [pull(1, 140)] }),
    ).toThrow('controller.strengthStep');
  });
});
