import { noLimits, noMechanics } from '@pullbook/contracts';
import { describe, expect, it } from 'vitest';
import { ceilingOfCar } from '../engine/ceiling-of-car.js';
import { DomainError } from '../plumbing/domain-error.js';
import { checkMaySet } from './check-may-set.js';
import { checkPresetValues, type ControllerAbilities } from './check-preset-values.js';
import type { PresetValues } from './preset-values.js';

const controller: ControllerAbilities = {
  presetSlots: 3,
  hasTimedOverride: true,
  dutyPct: { min: 5, max: 90, step: 0.5 },
  holdPct: { min: 0, max: 100, step: 5 },
  correction: null,
};
const values: PresetValues = {
  name: 'Dry',
  purpose: '',
  slot: 1,
  kind: 'standing',
  holdSeconds: null,
  targetKpa: 140,
  toleranceKpa: 4,
  ceilingKpa: 155,
  dutyPct: 45.5,
  gateHoldPct: 60,
  correctionStrength: null,
};
const limits = { ...noLimits, sensorFullScaleKpa: 200, turboKpa: 165, engineKpa: 165 };
const allowed = ceilingOfCar({ limits, mechanics: noMechanics, storedMap: null });

function refusal(
  change: Partial<PresetValues>,
  abilities: ControllerAbilities | null = controller,
): Pick<DomainError, 'code' | 'errors'> {
  try {
    checkPresetValues({ ...values, ...change }, abilities, allowed);
  } catch (error) {
    if (error instanceof DomainError) return error;
    throw error;
  }
  throw new Error('nothing was refused');
}

describe('checkPresetValues', () => {
  it('passes settings that the car and its controller can stand', () => {
    expect(() => checkPresetValues(values, controller, allowed)).not.toThrow();
    expect(() => checkPresetValues({ ...values, ceilingKpa: 165 }, controller, allowed)).not.toThrow();
    expect(() =>
      checkPresetValues({ ...values, kind: 'timed-override', holdSeconds: 8, slot: 4 }, controller, allowed),
    ).not.toThrow();
  });

  it.each([
    ['a ceiling at the target', { ceilingKpa: 140 }, 'ceiling-not-above-target', 'ceilingKpa'],
    ['a ceiling above the lowest limit', { ceilingKpa: 165.5 }, 'ceiling-above-car-limit', 'ceilingKpa'],
    ['a tolerance as wide as the target', { targetKpa: 4 }, 'invalid-request', 'toleranceKpa'],
    ['a slot behind the last', { slot: 4 }, 'invalid-request', 'slot'],
    ['a duty past the range', { dutyPct: 90.5 }, 'duty-out-of-range', 'dutyPct'],
    ['a duty below the range', { dutyPct: 4.5 }, 'duty-out-of-range', 'dutyPct'],
    ['a duty between two steps', { dutyPct: 45.2 }, 'duty-out-of-range', 'dutyPct'],
    ['a hold between two steps', { gateHoldPct: 62 }, 'hold-out-of-range', 'gateHoldPct'],
    [
      'a correction that the controller lacks',
      { correctionStrength: 2 },
      'invalid-request',
      'correctionStrength',
    ],
    ['seconds on a standing preset', { holdSeconds: 5 }, 'invalid-request', 'holdSeconds'],
    ['a timed override without seconds', { kind: 'timed-override' }, 'invalid-request', 'holdSeconds'],
  ] as const)('refuses %s', (_what, change, code, field) => {
    const error = refusal(change);
    expect(error.code).toBe(code);
    expect(error.errors.map((fault) => fault.field)).toEqual([field]);
  });

  it('says which limit binds', () => {
    expect(refusal({ ceilingKpa: 170 }).errors[0]?.message).toContain("turbo's limit, 165 kPa");
  });

  it('refuses a timed override on a controller without one', () => {
    const error = refusal(
      { kind: 'timed-override', holdSeconds: 5 },
      { ...controller, hasTimedOverride: false },
    );
    expect(error.errors[0]?.field).toBe('kind');
  });

  it('refuses a stored duty on a car without a controller, and nothing else', () => {
    expect(refusal({ gateHoldPct: null }, null).errors[0]?.field).toBe('dutyPct');
    expect(() =>
      checkPresetValues({ ...values, dutyPct: null, gateHoldPct: null, slot: 9 }, null, allowed),
    ).not.toThrow();
  });
});

describe('checkMaySet', () => {
  it('lets the desk write name and purpose, and names every tuning value that it may not', () => {
    expect(() => checkMaySet('desk', ['name', 'purpose'])).not.toThrow();
    expect(() => checkMaySet('desk', ['name', 'dutyPct'])).toThrow(DomainError);
    expect(() => checkMaySet('tuner', ['dutyPct', 'ceilingKpa'])).not.toThrow();
    expect(() => checkMaySet('owner', ['dutyPct', 'ceilingKpa'])).not.toThrow();
  });
});
