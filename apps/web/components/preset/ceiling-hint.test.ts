import { describe, expect, it } from 'vitest';
import { unitsOf } from '../units/units-of';
import { findBindingLimit, sayCeilingHint } from './ceiling-hint';

const none = {
  overBoostCutKpa: null,
  sensorFullScaleKpa: null,
  actuatorKpa: null,
  turboKpa: null,
  engineKpa: null,
};

describe('findBindingLimit', () => {
  it('names the lowest limit that is known', () => {
    expect(findBindingLimit({ ...none, overBoostCutKpa: 160, turboKpa: 150, engineKpa: 180 })).toEqual({
      name: 'turbo',
      statedKpa: 150,
      kpa: 150,
    });
  });

  it('keeps below an over-boost cut, which then binds before a limit just above it', () => {
    expect(findBindingLimit({ ...none, overBoostCutKpa: 160, turboKpa: 158 })).toEqual({
      name: 'over-boost cut',
      statedKpa: 160,
      kpa: 155,
    });
  });

  it('finds nothing where no limit is known', () => {
    expect(findBindingLimit(none)).toBeNull();
  });
});

describe('sayCeilingHint', () => {
  it('says the binding limit in the person’s unit', () => {
    const units = unitsOf({ pressure: 'bar', temperature: 'C' });
    expect(sayCeilingHint({ ...none, actuatorKpa: 165 }, units)).toContain('actuator, 1.65');
  });

  it('says what is kept below the cut', () => {
    const units = unitsOf({ pressure: 'kPa', temperature: 'C' });
    expect(sayCeilingHint({ ...none, overBoostCutKpa: 160 }, units)).toMatch(/160.kPa; .* 155.kPa or less/u);
  });

  it('says no more than the limit where the unit rounds: 155 kPa are 22.48 psi', () => {
    const units = unitsOf({ pressure: 'psi', temperature: 'C' });
    expect(sayCeilingHint({ ...none, overBoostCutKpa: 160 }, units)).toContain('at 22.4 psi or less');
  });

  it('asks for limits where none is known', () => {
    expect(sayCeilingHint(none, unitsOf({ pressure: 'kPa', temperature: 'C' }))).toContain('No limit');
  });
});
