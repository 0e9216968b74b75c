import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { adviseDuty } from './advise-duty.js';
import type { DutyAdvice, DutyAdviceRequest, DutyPull } from './duty-advice-types.js';
import { predictNextPeak } from './predict-next-peak.js';

/** Random numbers are fast-check's, which are seeded: the same cases every time. */
const RUNS = { seed: 20261125, numRuns: Number(process.env['PROPERTY_RUNS'] ?? 40) };

const share = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });

/** A car that rises between two duties, its pulls on the way up and around the target, with some false ones. */
const history = fc
  .record({
    dutyMin: fc.constantFrom(0, 5),
    dutyMax: fc.constantFrom(90, 100),
    dutyStep: fc.constantFrom(0.5, 1, 2),
    targetKpa: share(60, 200),
    tolerance: share(0.02, 0.04),
    ceiling: share(0.05, 0.15),
    base: fc.option(share(0.3, 0.8)),
    starts: share(0, 50),
    length: share(15, 70),
    floor: share(0.3, 0.8),
    rise: share(0.4, 1.2),
    scatter: share(0.003, 0.03),
    shots: fc.array(fc.record({ step: share(0, 1), normal: share(-2, 2), isFalse: share(0, 1) }), {
      maxLength: 9,
    }),
  })
  .map((drawn): DutyAdviceRequest => {
    const { dutyMin, dutyMax, dutyStep, targetKpa } = drawn;
    const meanOf = (duty: number): number => {
      const along = Math.min(Math.max((duty - drawn.starts) / drawn.length, 0), 1);
      return targetKpa * (drawn.floor + drawn.rise * along * along * (3 - 2 * along));
    };
    let highest: number = dutyMin;
    const pulls = drawn.shots.map(({ step, normal, isFalse }): DutyPull => {
      const wanted = Math.min(highest - 3 + 13 * step, dutyMax);
      const duty = dutyMin + Math.max(Math.floor((wanted - dutyMin) / dutyStep), 0) * dutyStep;
      highest = Math.max(highest, duty);
      const loss = isFalse < 0.06 ? 0.12 : 0;
      return { duty, peakKpa: meanOf(duty) * (1 + drawn.scatter * normal) * (1 - loss) };
    });
    return {
      controller: { dutyMin, dutyMax, dutyStep },
      goal: {
        targetKpa,
        toleranceKpa: targetKpa * drawn.tolerance,
        ceilingKpa: targetKpa * (1 + drawn.ceiling),
      },
      baseKpa: drawn.base === null ? null : targetKpa * drawn.base,
      pulls,
    };
  });

function scaled(request: DutyAdviceRequest, factor: number): DutyAdviceRequest {
  const { goal, baseKpa, pulls } = request;
  return {
    ...request,
    goal: {
      targetKpa: goal.targetKpa * factor,
      toleranceKpa: goal.toleranceKpa * factor,
      ceilingKpa: goal.ceilingKpa * factor,
    },
    baseKpa: baseKpa === null || baseKpa === undefined ? null : baseKpa * factor,
    pulls: pulls.map((pull) => ({ ...pull, peakKpa: pull.peakKpa * factor })),
  };
}

/** A stop allows no duty at all: less than any. */
const dutyOf = ({ duty }: DutyAdvice): number => duty ?? -Infinity;

/** Holds that the stricter request never gets a higher duty, and that in some cases it gets a lower one. */
function expectNeverHigher(cases: fc.Arbitrary<readonly [DutyAdviceRequest, DutyAdviceRequest]>): void {
  let lowered = 0;
  fc.assert(
    fc.property(cases, ([loose, strict]) => {
      const [most, asked] = [dutyOf(adviseDuty(loose)), dutyOf(adviseDuty(strict))];
      expect(asked).toBeLessThanOrEqual(most);
      if (asked < most) lowered += 1;
    }),
    RUNS,
  );
  expect(lowered).toBeGreaterThan(0);
}

describe('adviseDuty', () => {
  test('gives the same duty and the same chances, and pressures that are scaled too, if all pressures are scaled', () => {
    fc.assert(
      fc.property(history, share(0.2, 5), (request, factor) => {
        const one = adviseDuty(request);
        const other = adviseDuty(scaled(request, factor));
        expect([other.action, other.duty]).toEqual([one.action, one.duty]);
        expect(other.reasons.map(({ code }) => code)).toEqual(one.reasons.map(({ code }) => code));
        expect(other.provedBy).toEqual(one.provedBy);
        if (!one.prediction || !other.prediction) return;
        expect(other.prediction.medianKpa / one.prediction.medianKpa / factor).toBeCloseTo(1, 6);
        expect(other.prediction.highKpa / one.prediction.highKpa / factor).toBeCloseTo(1, 6);
        expect(other.prediction.probabilityOverCeiling).toBeCloseTo(one.prediction.probabilityOverCeiling, 6);
      }),
      RUNS,
    );
  });

  test('never gives a higher duty for a lower ceiling', () => {
    expectNeverHigher(
      fc.tuple(history, share(0.1, 0.95)).map(([request, part]) => {
        const { targetKpa, ceilingKpa } = request.goal;
        const goal = { ...request.goal, ceilingKpa: targetKpa + part * (ceilingKpa - targetKpa) };
        return [request, { ...request, goal }] as const;
      }),
    );
  });

  test('never gives a higher duty for a smaller risk limit', () => {
    expectNeverHigher(
      fc.tuple(history, share(0.004, 0.2), share(0.05, 0.95)).map(([request, riskLimit, part]) => {
        return [
          { ...request, riskLimit },
          { ...request, riskLimit: part * riskLimit },
        ] as const;
      }),
    );
  });

  test('never gives a higher duty for a smaller step limit', () => {
    expectNeverHigher(
      fc.tuple(history, share(2, 25), share(0.1, 0.95)).map(([request, stepLimit, part]) => {
        const smaller = Math.max(part * stepLimit, request.controller.dutyStep);
        return [
          { ...request, stepLimit },
          { ...request, stepLimit: smaller },
        ] as const;
      }),
    );
  });
});

describe('the order of pulls at equal duty', () => {
  const atOneHeat = ({ pulls, ...rest }: DutyAdviceRequest): DutyAdviceRequest => ({
    ...rest,
    pulls: pulls.map((pull) => ({ ...pull, heatSoakC: 5 })),
  });

  /** Pulls at equal duty change places among themselves; all others stay where they are. */
  const turnedAround = ({ pulls, ...rest }: DutyAdviceRequest): DutyAdviceRequest => {
    const left = new Map<number, DutyPull[]>();
    for (const pull of pulls) left.set(pull.duty, [...(left.get(pull.duty) ?? []), pull]);
    return { ...rest, pulls: pulls.map((pull) => left.get(pull.duty)?.pop() ?? pull) };
  };

  /** Histories that come back to their duties. */
  const withRepeats = fc
    .tuple(history, fc.array(share(-0.02, 0.02), { minLength: 2, maxLength: 4 }))
    .map(([request, misses]): DutyAdviceRequest => {
      const again = request.pulls
        .slice(-2)
        .flatMap((pull) => misses.map((miss) => ({ ...pull, peakKpa: pull.peakKpa * (1 + miss) })));
      return { ...request, pulls: [...request.pulls, ...again] };
    });

  test('does not matter to what is expected of the next peak if the car is as warm at all of them', () => {
    fc.assert(
      fc.property(withRepeats, (request) => {
        const question = { duty: request.controller.dutyMax / 2, shares: [0.1, 0.5, 0.9] };
        const one = predictNextPeak(atOneHeat(request), question);
        const other = predictNextPeak(turnedAround(atOneHeat(request)), question);
        // Explanations are resampled in the order of the pulls, which moves a quantile by a small part of the range.
        const slack = 0.05 * ((one[2] ?? 0) - (one[0] ?? 0));
        one.forEach((kpa, index) => expect(Math.abs((other[index] ?? 0) - kpa)).toBeLessThan(slack));
      }),
      RUNS,
    );
  });

  test('matters if the car warms up from pull to pull', () => {
    const request: DutyAdviceRequest = {
      controller: { dutyMin: 0, dutyMax: 100, dutyStep: 1 },
      goal: { targetKpa: 140, toleranceKpa: 4, ceilingKpa: 155 },
      baseKpa: 55,
      pulls: [144, 139, 137].map((peakKpa, index) => ({ duty: 50, peakKpa, heatSoakC: 12 * index })),
    };
    const pulls = request.pulls.map((pull, index, all) => ({
      ...pull,
      peakKpa: all[all.length - 1 - index]?.peakKpa ?? 0,
    }));
    const question = { duty: 50, shares: [0.5] };
    const [falling = 0] = predictNextPeak(request, question);
    const [rising = 0] = predictNextPeak({ ...request, pulls }, question);
    expect(rising).toBeGreaterThan(falling + 0.5);
  });

  test('does not matter to the advice where no reading is surprising', () => {
    const around = fc.tuple(history, fc.array(share(-0.006, 0.006), { minLength: 3, maxLength: 5 }));
    fc.assert(
      fc.property(around, ([{ goal, controller }, misses]) => {
        const climb = [10, 20, 30, 40].map((duty) => ({
          duty,
          peakKpa: goal.targetKpa * (0.35 + 0.011 * duty),
        }));
        const again = misses.map((miss) => ({ duty: 50, peakKpa: 0.9 * goal.targetKpa * (1 + miss) }));
        const request = atOneHeat({ controller, goal, baseKpa: null, pulls: [...climb, ...again] });
        const one = adviseDuty(request);
        const other = adviseDuty(turnedAround(request));
        expect([other.action, other.duty]).toEqual([one.action, one.duty]);
      }),
      RUNS,
    );
  });
});
