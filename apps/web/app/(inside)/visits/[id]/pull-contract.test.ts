import { PullNew } from '@pullbook/contracts';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pullContract } from './pull-contract';

const whole = { min: 0, max: 100, step: 1 };
const pull: PullNew = {
  presetId: '01936f3e-7c3a-7000-8000-000000000001',
  dutyPct: 40,
  holdPct: null,
  gear: 3,
  peakKpa: 112.4,
  settledKpa: null,
  riseTimeS: null,
  onsetRpm: null,
  heatSoaked: false,
  correctionStrength: null,
  overrideOn: null,
  heldForS: null,
  note: '',
};
const faultsAt = (change: Partial<Record<keyof PullNew, unknown>>, range = whole): PropertyKey[] => {
  const parsed = pullContract(range).safeParse({ ...pull, ...change });
  return parsed.success ? [] : parsed.error.issues.map((issue) => issue.path[0] ?? '');
};

describe('pullContract', () => {
  it('takes what the schema takes', () => {
    expect(faultsAt({})).toEqual([]);
    expect(faultsAt({ gear: null, peakKpa: -100, dutyPct: 0 })).toEqual([]);
    expect(faultsAt({ gear: 12, peakKpa: 600, dutyPct: 100 })).toEqual([]);
  });

  it('names every field that is missing or out of its limits', () => {
    expect(faultsAt({ peakKpa: null, dutyPct: null })).toEqual(['peakKpa', 'dutyPct']);
    expect(faultsAt({ peakKpa: 600.1, dutyPct: -1, gear: 13 })).toEqual(['peakKpa', 'dutyPct', 'gear']);
    expect(faultsAt({ gear: 2.5 })).toEqual(['gear']);
    expect(faultsAt({ peakKpa: Number.NaN })).toEqual(['peakKpa']);
  });

  it('refuses a duty that the controller cannot be set to', () => {
    const range = { min: 5, max: 90, step: 2.5 };
    expect(faultsAt({ dutyPct: 7.5 }, range)).toEqual([]);
    expect(faultsAt({ dutyPct: 8 }, range)).toEqual(['dutyPct']);
    expect(faultsAt({ dutyPct: 91 }, range)).toEqual(['dutyPct']);
  });

  it('lets nothing through that the schema refuses', () => {
    const anyNumber = fc.oneof(fc.double(), fc.integer({ min: -200, max: 800 }));
    fc.assert(
      fc.property(anyNumber, anyNumber, fc.option(anyNumber), (peakKpa, dutyPct, gear) => {
        const candidate = { ...pull, peakKpa, dutyPct, gear };
        return !pullContract(whole).safeParse(candidate).success || PullNew.safeParse(candidate).success;
      }),
    );
  });
});
