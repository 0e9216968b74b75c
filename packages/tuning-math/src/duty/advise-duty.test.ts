import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { adviseDuty } from './advise-duty.js';
import type { DutyAdviceRequest, DutyPull, DutyReasonCode } from './duty-advice-types.js';

const controller = { dutyMin: 0, dutyMax: 100, dutyStep: 1 };
const goal = { targetKpa: 140, toleranceKpa: 4, ceilingKpa: 155 };
const sound: DutyAdviceRequest = { controller, goal, baseKpa: 55, pulls: [] };

const pulls = (...pairs: [number, number][]): DutyPull[] =>
  pairs.map(([duty, peakKpa]) => ({ duty, peakKpa }));
const codeOf = (request: DutyAdviceRequest): DutyReasonCode | undefined =>
  adviseDuty(request).reasons[0]?.code;

const anyHistory = fc
  .record({
    dutyMin: fc.constantFrom(0, 5, 10),
    dutyMax: fc.constantFrom(60, 90, 100),
    dutyStep: fc.constantFrom(0.5, 1, 2, 5),
    targetKpa: fc.double({ min: 40, max: 220, noNaN: true }),
    tolerancePct: fc.double({ min: 1, max: 5, noNaN: true }),
    ceilingPct: fc.double({ min: 3, max: 20, noNaN: true }),
    stepLimit: fc.constantFrom(5, 8, 10),
    riskLimit: fc.constantFrom(0.005, 0.02, 0.05),
    basePct: fc.option(fc.double({ min: 20, max: 120, noNaN: true })),
    shots: fc.array(
      fc.record({
        dutyShare: fc.double({ min: 0, max: 1, noNaN: true }),
        peakPct: fc.double({ min: 0, max: 160, noNaN: true }),
      }),
      { maxLength: 8 },
    ),
  })
  .map((drawn): DutyAdviceRequest => {
    const { dutyMin, dutyMax, dutyStep, targetKpa } = drawn;
    const steps = Math.floor((dutyMax - dutyMin) / dutyStep);
    return {
      controller: { dutyMin, dutyMax, dutyStep },
      goal: {
        targetKpa,
        toleranceKpa: (targetKpa * drawn.tolerancePct) / 100,
        ceilingKpa: targetKpa * (1 + drawn.ceilingPct / 100),
      },
      stepLimit: drawn.stepLimit,
      riskLimit: drawn.riskLimit,
      baseKpa: drawn.basePct === null ? null : (targetKpa * drawn.basePct) / 100,
      pulls: drawn.shots.map(({ dutyShare, peakPct }) => ({
        duty: dutyMin + Math.round(dutyShare * steps) * dutyStep,
        peakKpa: (targetKpa * peakPct) / 100,
      })),
    };
  });

describe('adviseDuty keeps its safety rules over any history', () => {
  test('never past the step limit, never off the grid or out of range, never over the risk limit', () => {
    fc.assert(
      fc.property(anyHistory, (request) => {
        const { action, duty, prediction, curve, reasons } = adviseDuty(request);
        expect(curve.every(({ lowKpa, highKpa }) => Number.isFinite(lowKpa) && lowKpa <= highKpa)).toBe(true);
        if (duty === null) {
          expect(action).toBe('stop');
          expect(prediction).toBeNull();
          return;
        }
        const { dutyMin, dutyMax, dutyStep } = request.controller;
        const highest = Math.max(dutyMin, ...request.pulls.map((pull) => pull.duty));
        expect(duty).toBeLessThanOrEqual(highest + (request.stepLimit ?? 10) + 1e-9);
        expect(duty).toBeGreaterThanOrEqual(dutyMin);
        expect(duty).toBeLessThanOrEqual(dutyMax);
        const steps = (duty - dutyMin) / dutyStep;
        expect(Math.abs(steps - Math.round(steps))).toBeLessThan(1e-6);
        const most = reasons[0]?.code === 'measure-base' ? 0.1 : request.riskLimit;
        expect(prediction?.probabilityOverCeiling).toBeLessThanOrEqual(most ?? 0.02);
      }),
      { numRuns: 60, seed: 20261125 },
    );
  }, 120_000);
});

describe('adviseDuty says what to do and why', () => {
  test('the first pull is at most one step above the minimum', () => {
    const advice = adviseDuty(sound);
    expect(advice.action).toBe('pull');
    expect(advice.duty).toBeLessThanOrEqual(10);
    expect(advice.reasons[0]?.code).toBe('first-pull');
  });

  test('a car far below the target is raised by the whole step', () => {
    const advice = adviseDuty({ ...sound, pulls: pulls([10, 56], [20, 58], [30, 64]) });
    expect(advice).toMatchObject({ action: 'pull', duty: 40 });
    expect(advice.reasons[0]?.code).toBe('step-limit');
    expect(advice.reasons[0]?.text).toContain('10 points above 30 %');
  });

  test('a duty that made the target again and again is accepted, and the pulls that prove it are named', () => {
    const advice = adviseDuty({
      ...sound,
      pulls: pulls([10, 56], [20, 66], [30, 80], [40, 97], [50, 118], [58, 139.5], [58, 140.4]),
    });
    expect(advice).toMatchObject({ action: 'accept', duty: 58, provedBy: [5, 6] });
    expect(advice.reasons[0]?.code).toBe('inside-tolerance');
    expect(advice.probabilityInsideTolerance).toBeGreaterThan(0.9);
  });

  test('a peak that soars past the ceiling stops the work at once', () => {
    const advice = adviseDuty({ ...sound, pulls: pulls([10, 56], [20, 56.5], [30, 57], [40, 190]) });
    expect(advice).toMatchObject({ action: 'stop', duty: null, prediction: null });
    expect(advice.reasons[0]?.code).toBe('peak-soared');
    expect(advice.reasons[0]?.text).toContain('190 kPa at 40 %');
  });

  test('a falsely low reading below the target is repeated, not answered by more duty', () => {
    const history = pulls([10, 56], [20, 66], [30, 80], [40, 97], [50, 118], [55, 108]);
    const advice = adviseDuty({ ...sound, pulls: history });
    expect(advice).toMatchObject({ action: 'repeat', duty: 55 });
    expect(advice.reasons[0]?.code).toBe('low-reading-in-doubt');
  });

  test('two low readings running are a lost response', () => {
    const history = pulls([10, 56], [20, 66], [30, 80], [40, 97], [50, 118], [55, 92], [55, 91]);
    expect(codeOf({ ...sound, pulls: history })).toBe('response-lost');
  });

  test('a lost response stays one when somebody pulls on', () => {
    const lost: [number, number][] = [
      [10, 70.4],
      [18, 72.2],
      [26, 76.8],
      [34, 69.6],
      [42, 70.7],
      [50, 70.2],
    ];
    const asked = { ...sound, goal: { targetKpa: 116, toleranceKpa: 3, ceilingKpa: 128 }, baseKpa: 70 };
    expect(codeOf({ ...asked, pulls: pulls(...lost) })).toBe('response-lost');
    expect(codeOf({ ...asked, pulls: pulls(...lost, [58, 71.3]) })).toBe('response-lost');
  });

  describe('a car that was looked over and found sound', () => {
    const soared = pulls([10, 56], [20, 56.5], [30, 57], [40, 190]);
    const asked = { ...sound, goal: { targetKpa: 140, toleranceKpa: 4, ceilingKpa: 155 } };

    test('goes on below the pull that passed the ceiling, which counts as it was read', () => {
      expect(adviseDuty({ ...asked, pulls: soared }).action).toBe('stop');
      const advice = adviseDuty({ ...asked, pulls: soared, soundPulls: 4 });
      expect(advice.action).toBe('pull');
      expect(advice.duty).toBeGreaterThanOrEqual(30);
      expect(advice.duty).toBeLessThan(40);
      expect(advice.prediction?.probabilityOverCeiling).toBeLessThanOrEqual(0.02);
    });

    test('is stopped by the next pull that shows a fault', () => {
      const again = [...soared, ...pulls([31, 60], [31, 61], [31, 185])];
      expect(codeOf({ ...asked, pulls: again, soundPulls: 4 })).toBe('peak-soared');
    });

    test('is not stopped again by low pulls from before, but by new ones', () => {
      const low = pulls([10, 56], [20, 66], [30, 80], [40, 97], [50, 118], [55, 92], [55, 91]);
      expect(codeOf({ ...sound, pulls: low })).toBe('response-lost');
      expect(codeOf({ ...sound, pulls: low, soundPulls: 7 })).not.toBe('response-lost');
      const lower = [...low, ...pulls([55, 70], [55, 71], [55, 70])];
      expect(codeOf({ ...sound, pulls: lower, soundPulls: 7 })).toBe('response-lost');
    });

    test('gets the very same duty where nothing looked like a fault', () => {
      const plain = pulls([10, 56], [20, 66], [30, 80], [40, 97]);
      const [without, having] = [{}, { soundPulls: 4 }].map((more) =>
        adviseDuty({ ...sound, pulls: plain, ...more }),
      );
      expect(having).toMatchObject({ action: without?.action, duty: without?.duty });
      expect(having?.prediction).toEqual(without?.prediction);
    });
  });

  test('a car that stays flat to full duty cannot reach the target', () => {
    const history = pulls(...Array.from({ length: 10 }, (_, i): [number, number] => [10 * (i + 1), 57 + i]));
    expect(codeOf({ ...sound, pulls: history })).toBe('target-out-of-reach');
  });

  test('a floor over the target at the lowest duty is stopped', () => {
    const history = pulls([10, 151], [0, 150], [0, 150.5]);
    expect(codeOf({ ...sound, baseKpa: null, pulls: history })).toBe('floor-over-target');
  });

  test('a car whose base boost is not known is measured at the lowest setting, unless that is likely to be too much', () => {
    const unknown = { ...sound, goal: { ...goal, ceilingKpa: 149 }, baseKpa: null, riskLimit: 0.004 };
    const from = (dutyMin: number): DutyAdviceRequest => ({
      ...unknown,
      controller: { ...controller, dutyMin },
    });
    expect(codeOf(from(10))).toBe('measure-base');
    expect(codeOf(from(40))).toBe('no-safe-duty');
    expect(codeOf({ ...from(10), baseKpa: 147 })).toBe('no-safe-duty');
    expect(codeOf({ ...from(10), pulls: pulls([10, 147]) })).not.toBe('measure-base');
  });

  test('the same request gives the same advice to the last bit and is left as it was', () => {
    const request = Object.freeze({ ...sound, pulls: Object.freeze(pulls([10, 56], [20, 63])) });
    expect(adviseDuty(request)).toEqual(adviseDuty(structuredClone(request)));
  });
});
