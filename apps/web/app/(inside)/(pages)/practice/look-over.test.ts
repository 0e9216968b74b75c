import { nextPullOf } from '@pullbook/next-pull';
import type { PracticeSheet } from '@pullbook/practice-car';
import { describe, expect, it } from 'vitest';
import type { TakenPull } from '../../../../practice/practice-question';
import { lookOver } from './look-over';
import { advicePulls, basisOf } from './practice';

const sheet: PracticeSheet = {
  level: 'doubtful',
  number: 1,
  engine: '2.0 l, turbocharged',
  hasLog: false,
  controller: { dutyMin: 0, dutyMax: 100, dutyStep: 1 },
  goal: { targetKpa: 120, toleranceKpa: 4, ceilingKpa: 131 },
  baseKpa: 58,
  overBoostCutKpa: 140,
};
const taken = (duty: number, recordedPeakKpa: number, showsFault = false): TakenPull => ({
  duty,
  recordedPeakKpa,
  trueMeanKpa: recordedPeakKpa,
  isFalse: false,
  isSeenShort: false,
  showsFault,
  trace: null,
  isSetAside: false,
});
/** Three pulls running below what less duty made before. */
const lost = (showsFault: boolean) => [
  ...[taken(10, 62), taken(20, 72), taken(30, 85), taken(40, 100)],
  ...[80, 79, 81].map((peakKpa) => taken(45, peakKpa, showsFault)),
];
const now = new Date('2026-11-30T10:00:00.000Z');
const adviceFor = (pulls: readonly TakenPull[]) => nextPullOf(basisOf(sheet), advicePulls(pulls)).advice;

describe('lookOver', () => {
  it('finds a fault that has shown itself, which ends it', () => {
    expect(lookOver(lost(true), now)).toEqual({ ending: { kind: 'stop', because: 'fault' } });
  });

  it('finds nothing on a sound car, on which the advice goes on', () => {
    const pulls = lost(false);
    expect(adviceFor(pulls)).toMatchObject({ action: 'stop', reasons: [{ code: 'response-lost' }] });
    const after = lookOver(pulls, now).pulls ?? [];
    expect(after.map(({ foundSoundAt }) => foundSoundAt !== undefined)).toEqual([
      ...Array.from({ length: 6 }, () => false),
      true,
    ]);
    expect(adviceFor(after)?.action).not.toBe('stop');
  });

  it('goes with its pull where that is set aside', () => {
    const after = (lookOver(lost(false), now).pulls ?? []).map((pull) => ({ ...pull, isSetAside: true }));
    expect(advicePulls(after).at(-1)?.foundSoundAt).toBeNull();
  });
});
