import { noLimits, noMechanics, readinessKeys, type CarLimits } from '@pullbook/contracts';
import { describe, expect, it } from 'vitest';
import { judgeReadiness, type ReadinessFacts } from './judge-readiness.js';

function carWith(limits: Partial<CarLimits>): ReadinessFacts['car'] {
  return { limits: { ...noLimits, ...limits }, mechanics: noMechanics, storedMap: null };
}

const ready: ReadinessFacts = {
  okKeys: new Set(readinessKeys),
  overBoostCutKpa: 160,
  car: carWith({ engineKpa: 170 }),
  ceilings: [
    { name: 'Dry', ceilingKpa: 155 },
    { name: 'Wet', ceilingKpa: 120 },
  ],
};

describe('judgeReadiness', () => {
  it('passes when all is confirmed and the cut stands between the ceilings and what the car can stand', () => {
    expect(judgeReadiness(ready)).toEqual({ passed: true, missing: [] });
  });

  it('passes a cut that stands exactly 5 kPa above the highest ceiling or at the lowest limit', () => {
    expect(judgeReadiness({ ...ready, overBoostCutKpa: 160 }).passed).toBe(true);
    expect(judgeReadiness({ ...ready, overBoostCutKpa: 170 }).passed).toBe(true);
    const ceilings = [{ name: 'Low', ceilingKpa: 55.2 }];
    expect(judgeReadiness({ ...ready, ceilings, overBoostCutKpa: 60.2 }).passed).toBe(true);
    expect(judgeReadiness({ ...ready, ceilings, overBoostCutKpa: 60.1 }).passed).toBe(false);
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

  it.each([159.9, 157, 155, 154])(
    'does not pass a cut of %d kPa over a ceiling of 155 kPa',
    (overBoostCutKpa) => {
      const { passed, missing } = judgeReadiness({ ...ready, overBoostCutKpa });
      expect(passed).toBe(false);
      const lower = `lower that ceiling to ${Number((overBoostCutKpa - 5).toFixed(3))} kPa or less`;
      expect(missing).toEqual([
        `the over-boost cut (${overBoostCutKpa} kPa) must stand at least 5 kPa above the ceiling of Dry (155 kPa), so that scatter does not set it off: set the cut to 160 kPa or more, or ${lower}`,
      ]);
    },
  );

  it('asks for a lower ceiling where what the car can stand lets the cut go no higher', () => {
    const { passed, missing } = judgeReadiness({
      ...ready,
      car: carWith({ engineKpa: 158 }),
      overBoostCutKpa: 158,
    });
    expect(passed).toBe(false);
    expect(missing).toEqual([
      expect.stringMatching(/: lower that ceiling to 153 kPa or less, since .* engine's limit, 158 kPa$/),
    ]);
  });

  it.each([
    [160, true],
    [159.9, false],
  ])('keeps a ceiling of 155 kPa 5 kPa below a sensor that ends at %d kPa', (sensorFullScaleKpa, passed) => {
    const car = carWith({ sensorFullScaleKpa });
    const judged = judgeReadiness({ ...ready, car, overBoostCutKpa: sensorFullScaleKpa });
    expect(judged.passed).toBe(passed);
  });

  it('names the ceiling that stands above a limit that has come down since it was agreed', () => {
    const car = carWith({ turboKpa: 150, engineKpa: 170 });
    const { missing } = judgeReadiness({ ...ready, car, overBoostCutKpa: 150 });
    expect(missing.join()).toContain('ceiling of Dry (155 kPa)');
    expect(judgeReadiness({ ...ready, car, overBoostCutKpa: null }).missing).toEqual([
      expect.stringContaining('not set'),
      expect.stringContaining("ceiling of Dry (155 kPa) stands above the car's turbo's limit, 150 kPa"),
    ]);
  });
});
