import { describe, expect, test } from 'vitest';
import { NotFiniteError } from '../errors.js';
import { derivePresetStanding, type PresetStandingRequest, type SetPull } from './index.js';

const pull = (peakKpa: number, more: Partial<SetPull> = {}): SetPull => ({
  peakKpa,
  dutyPct: 46,
  holdPct: 60,
  isUsable: true,
  isHeatSoaked: false,
  ...more,
});
const steady = [140.2, 139.6, 140.4, 139.9, 140.5].map((peak) => pull(peak));
const pulls = [...steady, pull(139.4, { isHeatSoaked: true })];
const found: PresetStandingRequest = {
  isReplaced: false,
  revision: 4,
  signedOffRevision: null,
  hasController: true,
  targetKpa: 140,
  toleranceKpa: 4,
  ceilingKpa: 155,
  dutyPct: 46,
  gateHoldPct: 60,
  acceptedDutyPct: 46,
  pulls,
};
const stand = (more: Partial<PresetStandingRequest> = {}): ReturnType<typeof derivePresetStanding> =>
  derivePresetStanding({ ...found, ...more });
const codes = (more: Partial<PresetStandingRequest> = {}): string[] =>
  stand(more).missing.map((gap) => gap.code);
const climb = [pull(92, { dutyPct: 20 }), pull(158, { dutyPct: 55 })];

describe('derivePresetStanding', () => {
  test('is proven by the pulls at the stored settings, whatever was pulled on the way', () => {
    const standing = stand({ pulls: [...climb, ...pulls] });
    expect(standing.state).toBe('proven');
    expect(standing.atSettings).toEqual([2, 3, 4, 5, 6, 7]);
    expect(standing.proof).toMatchObject({ isProven: true, usablePulls: 6, highestPeakKpa: 140.5 });
    expect(standing.missing).toEqual([{ code: 'not-signed-off', text: 'It is not signed off yet.' }]);
  });
  test.each([
    ['a controller', { hasController: false }, 'no-controller'],
    ['a target', { targetKpa: null }, 'no-target'],
    ['a ceiling', { ceilingKpa: null }, 'no-ceiling'],
    ['a pull', { pulls: [] }, 'no-pull'],
  ] as const)('is a draft without %s, and says so', (_what, change, code) => {
    expect(stand(change).state).toBe('draft');
    expect(codes(change)).toEqual([code]);
  });
  test('is on test while no duty is stored, and names the one that was found', () => {
    expect(stand({ dutyPct: null })).toMatchObject({ state: 'on-test', proof: null, atSettings: [] });
    expect(stand({ dutyPct: null }).missing[0]?.text).toContain('46 %, is not stored');
    expect(stand({ dutyPct: null, acceptedDutyPct: null }).missing[0]?.text).toContain('has not accepted');
  });
  test('is on test while another duty or gate hold is stored than was pulled', () => {
    expect(codes({ dutyPct: 45 })).toEqual(['no-pull-at-settings']);
    expect(stand({ dutyPct: 45 }).missing[0]?.text).toBe(
      'No pull was made at the stored settings, 45 % duty and 60 % gate hold. The advice has accepted 46 % duty.',
    );
    expect(codes({ gateHoldPct: 65 })).toEqual(['no-pull-at-settings']);
    expect(stand({ gateHoldPct: null }).state).toBe('proven');
  });
  test('tells what the proof lacks', () => {
    expect(codes({ pulls: steady })).toEqual(['no-heat-soaked-pull']);
    expect(codes({ rule: { leastPulls: 8 } })).toEqual(['too-few-pulls']);
    expect(codes({ pulls: [...pulls, pull(156)] })).toContain('ceiling-passed');
  });
  test('proves a timed override on its own pulls, target and ceiling', () => {
    const timed = { kind: 'timed-override', holdSeconds: 8 } as const;
    const on = pulls.map((each) => ({ ...each, isOverrideOn: true, heldForS: 7.8 }));
    expect(stand({ ...timed, pulls: on }).state).toBe('proven');
    expect(codes({ ...timed, pulls: on.map((each) => ({ ...each, isOverrideOn: false })) })).toContain(
      'no-override-pull',
    );
    expect(codes({ ...timed, pulls: on.map((each) => ({ ...each, heldForS: null })) })).toEqual([
      'override-end-not-seen',
    ]);
    expect(codes({ ...timed, targetKpa: 150, ceilingKpa: 160, pulls: on })).toContain('mean-off-target');
  });
  test('nothing is proven while the advice says stop', () => {
    const stopText = 'Boost fell although duty rose: look for a leak.';
    expect(stand({ stopText })).toMatchObject({
      state: 'on-test',
      missing: [{ code: 'advice-stops', text: stopText }],
    });
  });
  test('is signed off for exactly the sealed revision', () => {
    expect(stand({ signedOffRevision: 4 })).toMatchObject({ state: 'signed-off', missing: [] });
    expect(stand({ signedOffRevision: 3 }).state).toBe('proven');
  });
  test('is replaced before anything else', () => {
    expect(stand({ isReplaced: true, signedOffRevision: 4 }).state).toBe('replaced');
  });
  test('refuses a peak that is no number, and leaves a frozen request alone', () => {
    expect(() => stand({ pulls: [pull(NaN)] })).toThrow(NotFiniteError);
    expect(derivePresetStanding(Object.freeze({ ...found, pulls: Object.freeze(pulls) })).state).toBe(
      'proven',
    );
  });
});
