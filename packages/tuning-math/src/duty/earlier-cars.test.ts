import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { OutOfRangeError } from '../errors.js';
import { adviseDuty } from './advise-duty.js';
import type { DutyAdviceRequest, DutyPull, EarlierCar } from './duty-advice-types.js';
import { buildPriorOf } from './earlier-cars.js';
import { predictNextPeak } from './predict-next-peak.js';

const RISK_LIMIT = 0.02;
const goal = { targetKpa: 140, toleranceKpa: 4, ceilingKpa: 155 };
const controller = { dutyMin: 0, dutyMax: 100, dutyStep: 1 };

/** A sigmoid response of one build; its cars lie a little along duty and in level from it. */
const peakAt = (duty: number, middle: number, level = 1): number =>
  level * (55 + 110 / (1 + Math.exp(-(duty - middle) / 6)));
const pullsAt = (duties: readonly number[], middle: number, level = 1): DutyPull[] =>
  duties.map((duty) => ({ duty, peakKpa: peakAt(duty, middle, level) }));
const carAt = (middle: number, level = 1): EarlierCar => ({
  baseKpa: 55 * level,
  pulls: pullsAt([10, 20, 30, 40, 50, 56, 60], middle, level),
});

const sameBuild = [carAt(51), carAt(53, 1.02), carAt(50, 0.99), carAt(52, 0.98)];
const asked = (pulls: readonly DutyPull[], earlierCars: readonly EarlierCar[] = []): DutyAdviceRequest => ({
  controller,
  goal,
  riskLimit: RISK_LIMIT,
  baseKpa: 55,
  pulls,
  earlierCars,
});
const leanText = (request: DutyAdviceRequest): string | undefined =>
  adviseDuty(request).reasons.find(({ code }) => code === 'earlier-cars')?.text;

describe('earlier cars of the build', () => {
  test('narrow the range that is expected of the next peak', () => {
    const pulls = pullsAt([10, 20, 30], 51.5);
    const width = (request: DutyAdviceRequest): number => {
      const { prediction } = adviseDuty(request);
      return (prediction?.highKpa ?? 0) - (prediction?.lowKpa ?? 0);
    };
    expect(width(asked(pulls, sameBuild))).toBeLessThan(0.7 * width(asked(pulls)));
  });

  test('are named with their number and with how far this car follows them', () => {
    expect(leanText(asked([], sameBuild))).toContain('Leans on 4 earlier cars of this build');
    expect(leanText(asked(pullsAt([10, 20, 30], 51.5), sameBuild))).toMatch(/this one follows: 9\d %/);
    expect(leanText(asked([]))).toBeUndefined();
  });

  test('are let go when this car answers otherwise', () => {
    const another = pullsAt([10, 20, 30, 36], 28);
    expect(leanText(asked(another, sameBuild))).toContain('answered otherwise than this one');
    const [own, leaned] = [adviseDuty(asked(another)), adviseDuty(asked(another, sameBuild))];
    expect(Math.abs((own.duty ?? 0) - (leaned.duty ?? 0))).toBeLessThanOrEqual(2);
  });

  test('say nothing with fewer than three pulls', () => {
    const short = [{ pulls: pullsAt([40, 50], 51) }];
    expect(buildPriorOf(asked([], short))).toBeUndefined();
    expect(adviseDuty(asked([], short))).toEqual(adviseDuty(asked([])));
  });

  test('change nothing in an accept or a stop, which rest on this car alone', () => {
    const accepted = pullsAt([10, 20, 30, 40, 50, 58, 58, 58], 51.5).map((pull) =>
      pull.duty === 58 ? { ...pull, peakKpa: 140 } : pull,
    );
    const lost = pullsAt([10, 20, 30, 40, 50], 45).concat([
      { duty: 52, peakKpa: 60 },
      { duty: 52, peakKpa: 61 },
    ]);
    for (const pulls of [accepted, lost]) {
      const own = adviseDuty(asked(pulls));
      expect(['accept', 'stop']).toContain(own.action);
      expect(adviseDuty(asked(pulls, sameBuild))).toEqual(own);
    }
  });

  test('never bring about an accept', () => {
    const once = pullsAt([10, 20, 30, 40, 50], 51.5);
    for (let count = 1; count <= once.length; count += 1) {
      const pulls = once.slice(0, count);
      if (adviseDuty(asked(pulls)).action === 'accept') continue;
      expect(adviseDuty(asked(pulls, sameBuild)).action).not.toBe('accept');
    }
  });

  test('are refused with a pull that no controller can have made, named by its place', () => {
    const earlier = [carAt(51), { pulls: [{ duty: 120, peakKpa: 60 }] }];
    expect(() => adviseDuty(asked([], earlier))).toThrow(OutOfRangeError);
    expect(() => adviseDuty(asked([], earlier))).toThrow('earlierCars[1].pulls[0].duty');
  });

  test('loosen neither the step limit nor the risk limit, whoever they are', () => {
    const between = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });
    const build = fc.array(fc.tuple(between(25, 75), between(0.85, 1.15)), { minLength: 1, maxLength: 3 });
    fc.assert(
      fc.property(build, between(30, 70), fc.integer({ min: 0, max: 5 }), (cars, middle, count) => {
        const pulls = pullsAt([8, 16, 25, 33, 40].slice(0, count), middle);
        const { duty, prediction } = adviseDuty(
          asked(
            pulls,
            cars.map(([centre, level]) => carAt(centre, level)),
          ),
        );
        if (duty === null) return;
        expect(duty).toBeLessThanOrEqual(Math.max(0, ...pulls.map((pull) => pull.duty)) + 10);
        expect(prediction?.probabilityOverCeiling).toBeLessThanOrEqual(RISK_LIMIT);
        // By this car's pulls alone the same peak keeps to the limit too.
        const [high = Infinity] = predictNextPeak(asked(pulls), { duty, shares: [1 - RISK_LIMIT] });
        expect(high).toBeLessThanOrEqual(1.002 * goal.ceilingKpa);
      }),
      { seed: 20261125, numRuns: 25 },
    );
  });
});
