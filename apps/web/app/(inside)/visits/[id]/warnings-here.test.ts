import type { PullNew } from '@pullbook/contracts';
import { describe, expect, it } from 'vitest';
import { warningsHere } from './warnings-here';

const pull = { dutyPct: 30, holdPct: 60, peakKpa: 120 } as PullNew;
const next = { stepLimit: 10, basis: { ceilingKpa: 130 } } as never;
const before = (dutyPct: number, holdPct: number | null, more = {}) => ({
  ...{ dutyPct, holdPct, usable: true, voidedAt: null },
  ...more,
});
const codes = (of: Parameters<typeof warningsHere>[1], driven = pull) =>
  warningsHere(driven, of).map(({ code }) => code);

describe('warningsHere', () => {
  const preset = { gateHoldPct: null };

  it('holds a pull against the highest usable duty and hold before it, whatever came last', () => {
    const pulls = [before(25, 55), before(10, 40)];
    expect(codes({ preset, pulls, next, lowestDutyPct: 0 })).toEqual([]);
  });

  it('does not count pulls that are void or not usable', () => {
    const pulls = [
      before(25, 55, { voidedAt: '2026-01-01' }),
      before(28, 58, { usable: false }),
      before(10, 40),
    ];
    expect(codes({ preset, pulls, next, lowestDutyPct: 0 })).toEqual([
      'over-step-limit',
      'hold-over-step-limit',
    ]);
  });

  it('knows no step of the gate hold where none was ever set, and one from what the preset stores', () => {
    expect(codes({ preset, pulls: [before(25, null)], next, lowestDutyPct: 0 })).toEqual([]);
    const stored = { gateHoldPct: 45 };
    expect(codes({ preset: stored, pulls: [before(25, null)], next, lowestDutyPct: 0 })).toEqual([
      'hold-over-step-limit',
    ]);
  });

  it('takes the duty that an earlier visit proved for a fair first pull, and nothing above it', () => {
    const back = { stepLimit: 10, basis: { ceilingKpa: 130, provenDutyPct: 30 } } as never;
    const bench = { preset, pulls: [], next: back, lowestDutyPct: 0 };
    expect(codes(bench)).toEqual([]);
    expect(codes(bench, { ...pull, dutyPct: 31 })).toEqual(['over-step-limit']);
    expect(codes({ ...bench, next })).toEqual(['over-step-limit']);
  });

  it('tells a peak past the ceiling, and nothing where no ceiling is known', () => {
    const high = { ...pull, peakKpa: 131 };
    expect(codes({ preset, pulls: [before(25, 55)], next, lowestDutyPct: 0 }, high)).toEqual([
      'past-ceiling',
    ]);
    expect(codes({ preset, pulls: [], next: undefined, lowestDutyPct: 0 }, high)).toEqual([]);
  });
});
