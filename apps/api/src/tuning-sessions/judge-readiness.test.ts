import { noLimits, readinessKeys } from '@pullbook/contracts';
import { describe, expect, it } from 'vitest';
import { judgeReadiness, type ReadinessFacts } from './judge-readiness.js';

const ready: ReadinessFacts = {
  okKeys: new Set(readinessKeys),
  overBoostCutKpa: 160,
  limits: { ...noLimits, engineKpa: 170 },
  ceilings: [
    { name: 'Dry', ceilingKpa: 155 },
    { name: 'Wet', ceilingKpa: 120 },
  ],
};

describe('judgeReadiness', () => {
  it('passes when all is confirmed and the cut stands between the ceilings and what the car can stand', () => {
    expect(judgeReadiness(ready)).toEqual({ passed: true, missing: [] });
  });

  it('passes a cut that stands exactly at the highest ceiling or at the lowest limit', () => {
    expect(judgeReadiness({ ...ready, overBoostCutKpa: 155 }).passed).toBe(true);
    expect(judgeReadiness({ ...ready, overBoostCutKpa: 170 }).passed).toBe(true);
  });

  it.each(readinessKeys)('does not pass without %s', (key) => {
    const okKeys = new Set(readinessKeys.filter((other) => other !== key));
    const judgement = judgeReadiness({ ...ready, okKeys });
    expect(judgement.passed).toBe(false);
    expect(judgement.missing).toHaveLength(1);
  });

  it('does not pass without an over-boost cut', () => {
    expect(judgeReadiness({ ...ready, overBoostCutKpa: null }).missing[0]).toContain('not set');
  });

  it('does not pass a cut above what the car can stand, and says what binds', () => {
    const { passed, missing } = judgeReadiness({ ...ready, overBoostCutKpa: 171 });
    expect(passed).toBe(false);
    expect(missing).toEqual([expect.stringContaining("engine's limit, 170 kPa")]);
  });

  it('does not pass a cut below a ceiling, and names the preset', () => {
    const { passed, missing } = judgeReadiness({ ...ready, overBoostCutKpa: 154 });
    expect(passed).toBe(false);
    expect(missing).toEqual([expect.stringContaining('ceiling of Dry (155 kPa)')]);
  });
});
