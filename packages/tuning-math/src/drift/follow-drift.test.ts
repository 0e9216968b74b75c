import { describe, expect, test } from 'vitest';
import { OutOfRangeError } from '../errors.js';
import { followDrift, type FollowedVisit } from './index.js';

const usual = { gear: 4, gradientPct: 0, intakeC: 18, barometerAbsKpa: 99, heatSoakC: 0 };
type More = Partial<FollowedVisit> & { readonly intakeC?: number | null };
const visit = (peaksKpa: readonly number[], { intakeC = 18, ...more }: More = {}): FollowedVisit => ({
  pulls: peaksKpa.map((peakKpa) => ({ peakKpa, conditions: { ...usual, intakeC } })),
  isSignedOff: false,
  isProof: false,
  ...more,
});
const signed = (peaksKpa: readonly number[], more: More = {}): FollowedVisit =>
  visit(peaksKpa, { ...more, isSignedOff: true });

describe('followDrift', () => {
  test('holds later visits against the first that was signed off or proven', () => {
    const first = followDrift([visit([120, 150]), signed([140, 141, 139]), visit([140.5])]);
    expect(first?.baselineVisit).toBe(1);
    expect(first?.drift.centreKpa).toBeCloseTo(140, 9);
    expect(first?.recent.map(({ peakKpa }) => peakKpa)).toEqual([140.5]);
    const proven = followDrift([visit([140, 141, 139], { isProof: true }), signed([145])]);
    expect(proven?.baselineVisit).toBe(0);
  });
  test('watches nothing before a visit of two pulls proves or signs the preset', () => {
    expect(followDrift([])).toBeNull();
    expect(followDrift([visit([140, 141]), signed([140])])).toBeNull();
  });
  test('adds up a creep over visits that were signed off without an alarm', () => {
    const at = (lost: number) => [140 - lost, 140.6 - lost, 139.4 - lost];
    const creep = [0, 2, 4].map((lost) => signed(at(lost)));
    expect(followDrift(creep)?.drift.isDrifting).toBe(false);
    const followed = followDrift([...creep, visit(at(8))]);
    expect(followed?.baselineVisit).toBe(0);
    expect(followed?.drift.rule).toBe('ewma-moving-average');
    expect(followed?.drift.driftPct).toBeLessThan(-1);
  });
  test('a sign-off while the alarm stands makes a new baseline; more pulls without one do not', () => {
    const before = signed([140, 140.6, 139.4]);
    const later = [126, 126.4, 125.8];
    const alarmed = followDrift([before, visit(later)]);
    expect(alarmed?.drift).toMatchObject({ isDrifting: true, rule: 'shewhart-single-pull', firedAt: 0 });
    expect(alarmed?.drift.driftPct).toBeCloseTo(-10, 0);
    const accepted = followDrift([before, signed(later), visit([126.2])]);
    expect(accepted?.baselineVisit).toBe(1);
    expect(accepted?.drift).toMatchObject({ isDrifting: false, rule: null });
  });
  test('fits the conditions on the baseline alone, so that a drift in other weather stays a drift', () => {
    const before = signed([140, 140.6, 139.4]);
    const followed = followDrift([before, visit([126, 126.4, 125.8], { intakeC: 30 })]);
    expect(followed?.drift.isDrifting).toBe(true);
    expect(followed?.model.pullCount).toBe(3);
    expect(followed?.recent[0]).toMatchObject({ peakKpa: 126, notCorrectedFor: ['intake'] });
    expect(followed?.shift.uncorrected).toEqual([
      { condition: 'intake', change: 12, possiblePct: expect.closeTo(1.2, 1) },
    ]);
  });
  test('takes the weather of the baseline as reference', () => {
    const { model } = followDrift([signed([140, 141], { intakeC: 7 })]) ?? {};
    expect(model?.reference).toEqual({ ...usual, intakeC: 7 });
  });
  test("the preset's own spread counts beside common practice: wide limits after wide scatter", () => {
    const visits = [signed([140, 141, 139]), visit([154])];
    const wide = followDrift(visits, { squares: 20 * 0.04 ** 2, degreesOfFreedom: 20 });
    expect(followDrift(visits)?.drift.isDrifting).toBe(true);
    expect(wide?.drift.isDrifting).toBe(false);
  });
  test('refuses a spread below zero and leaves its input alone', () => {
    const visits = Object.freeze([Object.freeze(signed([140, 141]))]);
    expect(() => followDrift(visits, { squares: -1, degreesOfFreedom: 1 })).toThrow(OutOfRangeError);
    expect(() => followDrift(visits, { squares: 0, degreesOfFreedom: -1 })).toThrow(OutOfRangeError);
    expect(followDrift(visits)?.drift.isDrifting).toBe(false);
  });
});
