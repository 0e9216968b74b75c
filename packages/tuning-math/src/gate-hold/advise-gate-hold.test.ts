import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { NotFiniteError, OutOfRangeError } from '../errors.js';
import { adviseGateHold, type GateHoldRequest, type HoldPull } from './index.js';

fc.configureGlobal({ seed: 20261125 });

const controller = { holdMin: 0, holdMax: 100, holdStep: 1 };
const goal = { targetKpa: 140, toleranceKpa: 4, ceilingKpa: 158, overshootLimitPct: 5 };
const rest = { controller, goal, stepLimit: 10, riskLimit: 0.02 };
const ask = (pulls: HoldPull[], more: Partial<GateHoldRequest> = {}): ReturnType<typeof adviseGateHold> =>
  adviseGateHold({ ...rest, ...more, pulls });
const pull = (holdPct: number, overshootPct: number, settledKpa = 138.5): HoldPull => ({
  holdPct,
  settledKpa,
  peakKpa: settledKpa * (1 + overshootPct / 100),
});
const codes = (advice: ReturnType<typeof adviseGateHold>): string[] =>
  advice.reasons.map((reason) => reason.code);

/** A car whose overshoot is 1 % up to a knee and then rises by 0.4 % a point, read without scatter. */
function searchOnCar(kneePct: number): { advice: ReturnType<typeof adviseGateHold>; pulls: HoldPull[] } {
  const truth = (hold: number): number => 1 + 0.4 * Math.max(0, hold - kneePct);
  const pulls = [{ ...pull(40, truth(40)), riseTimeS: 1.4, onsetRpm: 3200 }];
  let advice = ask(pulls);
  for (let count = 0; count < 20 && advice.action === 'pull'; count += 1) {
    const hold = advice.holdPct ?? NaN;
    pulls.push({
      ...pull(hold, truth(hold)),
      riseTimeS: 1.4 - 0.005 * (hold - 40),
      onsetRpm: 3200 - 5 * (hold - 40),
    });
    advice = ask(pulls);
  }
  return { advice, pulls };
}

describe('adviseGateHold', () => {
  test('finds the hold whose overshoot keeps the limit, within the step limit, and says what it gained', () => {
    const { advice, pulls } = searchOnCar(62);
    // 1 + 0.4 (hold - 62) = 5 at 72
    expect(advice.holdPct).toBeGreaterThanOrEqual(67);
    expect(advice.holdPct).toBeLessThanOrEqual(73);
    expect(pulls.length).toBeLessThanOrEqual(8);
    expect(advice.provedBy.length).toBeGreaterThan(0);
    expect(advice.gain?.riseTimeS).toBeCloseTo(0.005 * ((advice.holdPct ?? NaN) - 40), 6);
    expect(codes(advice)).toContain('faster-response');
  });
  test('begins within one step of the lowest setting', () => {
    const advice = ask([]);
    expect(advice).toMatchObject({ action: 'pull', holdPct: 10 });
    expect(codes(advice)).toEqual(['first-pull']);
    expect(advice.reasons[0]?.text).toContain('10 %');
  });
  test('tells a chance without any pull too, where the limit is the very overshoot that is expected', () => {
    const { prediction } = ask([], { goal: { ...goal, overshootLimitPct: 2 } });
    expect(prediction?.probabilityOverLimit).toBeGreaterThan(0.4);
    expect(prediction?.probabilityOverLimit).toBeLessThan(0.7);
  });
  test('steps back from a hold that overshot', () => {
    const advice = ask([pull(40, 1), pull(50, 1.2), pull(60, 1.1), pull(70, 9)]);
    expect(advice.action).toBe('pull');
    expect(advice.holdPct).toBeLessThan(70);
    expect(codes(advice)).toContain('back-down');
  });
  test('does not go back to a hold whose peak came near the ceiling', () => {
    const near = { ...pull(70, 1), peakKpa: 0.995 * goal.ceilingKpa };
    const calm = [40, 50, 60, 60, 65, 65].map((hold) => pull(hold, 1));
    for (const pulls of [
      [...calm, near],
      [...calm, near, ...calm],
    ])
      expect(ask(pulls).holdPct).toBeLessThan(70);
  });
  test('accepts the highest setting where nothing overshoots', () => {
    const pulls = [60, 70, 80, 90, 100, 100].map((hold) => pull(hold, 1));
    const advice = ask(pulls);
    expect(advice).toMatchObject({ action: 'accept', holdPct: 100, provedBy: [4, 5] });
    expect(codes(advice)).toContain('highest-setting');
  });
  test('goes back to duty where boost has shifted away from the goal', () => {
    const advice = ask([pull(40, 1, 139), pull(50, 1, 128), pull(50, 1, 127), pull(50, 1, 127)]);
    expect(advice).toMatchObject({ action: 'back-to-duty', holdPct: null, prediction: null });
    expect(codes(advice)).toEqual(['peak-shifted']);
  });
  test('keeps the found hold but goes back to duty where the hold itself has moved the peak', () => {
    const tight = { ...goal, toleranceKpa: 1.5 };
    const pulls = [60, 70, 80, 90, 100, 100].map((hold) => pull(hold, 1 + 0.035 * (hold - 60), 139.5));
    const advice = ask(pulls, { goal: tight });
    expect(advice.action).toBe('back-to-duty');
    expect(advice.holdPct).not.toBeNull();
    expect(codes(advice)[0]).toBe('peak-moved-by-hold');
  });
  test('stops where even the lowest hold overshoots', () => {
    const advice = ask([pull(0, 9, 137), pull(0, 9.5, 137), pull(10, 9.2, 137)], {
      goal: { ...goal, ceilingKpa: 170, toleranceKpa: 12 },
    });
    expect(advice.action).toBe('stop');
    expect(codes(advice)).toEqual(['overshoot-at-lowest-hold']);
  });
  test('stops after a second pull past the ceiling', () => {
    const advice = ask([pull(40, 1), pull(50, 15), pull(45, 15)]);
    expect(advice).toMatchObject({ action: 'stop', holdPct: null });
    expect(codes(advice)).toEqual(['ceiling-passed-again']);
  });
  describe('on a car that was looked over and found sound', () => {
    const passedTwice = [10, 20, 30].map((hold) => pull(hold, 1)).concat(pull(50, 15), pull(45, 14.5));

    test('goes on below the holds that passed the ceiling, within its risk, and says so', () => {
      expect(ask(passedTwice).action).toBe('stop');
      const advice = ask(passedTwice, { soundPulls: 5 });
      expect(advice.action).toBe('pull');
      expect(advice.holdPct).toBeLessThan(45);
      expect(advice.prediction?.probabilityOverCeiling).toBeLessThanOrEqual(0.02);
      expect(advice.reasons.at(-1)?.code).toBe('found-sound');
      expect(advice.reasons.at(-1)?.text).toContain('the first 5 pulls of this search');
    });
    test('stops at the next pull past the ceiling, but not at one that keeps it', () => {
      expect(ask([...passedTwice, pull(35, 1)], { soundPulls: 5 }).action).not.toBe('stop');
      const again = ask([...passedTwice, pull(35, 15)], { soundPulls: 5 });
      expect(again).toMatchObject({ action: 'stop', reasons: [{ code: 'ceiling-passed-again' }] });
      expect(codes(again)).toEqual(['ceiling-passed-again']);
    });
    test('stops at a second pass where the car was looked over after the first', () => {
      expect(codes(ask(passedTwice, { soundPulls: 4 }))).toEqual(['ceiling-passed-again']);
    });
    test('keeps the stops that are no sign of a fault', () => {
      const over = [pull(0, 9, 137), pull(0, 9.5, 137), pull(10, 9.2, 137)];
      const high = { goal: { ...goal, ceilingKpa: 170, toleranceKpa: 12 }, soundPulls: 3 };
      expect(codes(ask(over, high))).toEqual(['overshoot-at-lowest-hold']);
      const low = { goal: { ...goal, ceilingKpa: 141 }, soundPulls: 1 };
      expect(codes(ask([pull(40, 1)], low))).toEqual(['no-safe-hold']);
    });
    test.each([-1, 6, 1.5, NaN])('refuses %s sound pulls out of 5', (soundPulls) => {
      expect(() => ask(passedTwice, { soundPulls })).toThrow('soundPulls');
    });
  });
  test('stops where no hold keeps the ceiling risk', () => {
    const advice = ask([pull(40, 1)], { goal: { ...goal, ceilingKpa: 141 } });
    expect(advice.action).toBe('stop');
    expect(codes(advice)).toEqual(['no-safe-hold']);
  });
  test('repeats a last pull that fits no curve through the others', () => {
    const pulls = [...[40, 50, 60, 60, 60, 70].map((hold) => pull(hold, 0.8)), pull(65, 7.2)];
    const advice = ask(pulls, { goal: { ...goal, ceilingKpa: 200 } });
    expect(advice).toMatchObject({ action: 'repeat', holdPct: 65 });
    expect(codes(advice)).toEqual(['reading-in-doubt']);
  });
  test('does not repeat such a pull where its peak passed the ceiling', () => {
    const others = [30, 50, 50, 50, 60, 60, 60].map((hold) => pull(hold, 0.8));
    const passed = pull(40, 9);
    const advice = ask([...others, passed], { goal: { ...goal, ceilingKpa: passed.peakKpa - 0.5 } });
    expect(advice.holdPct).toBeLessThan(40);
    expect(codes(advice)).not.toContain('reading-in-doubt');
  });

  test('never advises past range, step limit or ceiling risk, whatever the history', () => {
    const anyPull = fc
      .record({
        hold: fc.integer({ min: 0, max: 100 }),
        overshoot: fc.double({ min: -1, max: 12, noNaN: true }),
        settled: fc.double({ min: 125, max: 150, noNaN: true }),
      })
      .map(({ hold, overshoot, settled }) => pull(hold, overshoot, settled));
    fc.assert(
      fc.property(
        fc.array(anyPull, { maxLength: 6 }),
        fc.integer({ min: 1, max: 10 }),
        fc.constantFrom(0.005, 0.02, 0.05),
        fc.boolean(),
        (pulls, stepLimit, riskLimit, isSound) => {
          const advice = ask(pulls, { stepLimit, riskLimit, soundPulls: isSound ? pulls.length : 0 });
          expect(advice.reasons.length).toBeGreaterThan(0);
          if (advice.action !== 'pull' && advice.action !== 'repeat') return;
          const highest = Math.max(controller.holdMin, ...pulls.map((each) => each.holdPct));
          expect(advice.holdPct).toBeGreaterThanOrEqual(0);
          expect(advice.holdPct).toBeLessThanOrEqual(Math.min(100, highest + stepLimit));
          if (pulls.length > 0)
            expect(advice.prediction?.probabilityOverCeiling).toBeLessThanOrEqual(riskLimit + 1e-12);
        },
      ),
      { numRuns: 60 },
    );
  });
  test('finds nothing above the highest hold pulled, nor far from any pull', () => {
    const anyPull = fc
      .record({
        hold: fc.integer({ min: 40, max: 95 }),
        noise: fc.double({ min: -0.6, max: 0.6, noNaN: true }),
      })
      .map(({ hold, noise }) => pull(hold, 1 + 0.8 * Math.max(0, hold - 70) + noise));
    let found = 0;
    fc.assert(
      fc.property(fc.array(anyPull, { minLength: 4, maxLength: 9 }), (pulls) => {
        const advice = ask(pulls, { goal: { ...goal, ceilingKpa: 175, toleranceKpa: 9 } });
        if (advice.provedBy.length === 0) return;
        found += 1;
        const holds = pulls.map((each) => each.holdPct);
        expect(advice.holdPct).toBeLessThanOrEqual(Math.max(...holds));
        for (const index of advice.provedBy)
          expect(Math.abs((holds[index] ?? NaN) - (advice.holdPct ?? NaN))).toBeLessThanOrEqual(3);
      }),
      { numRuns: 40 },
    );
    expect(found).toBeGreaterThan(5);
  });
  test('sees more danger ahead where boost rises quickly than where it rises slowly', () => {
    const climb = (riseTimeS: number): HoldPull[] =>
      [40, 40, 40, 50, 60].map((hold) => ({ ...pull(hold, 1), riseTimeS }));
    expect(ask(climb(0.5)).holdPct).toBeLessThan(ask(climb(2.5)).holdPct ?? NaN);
  });
  test('stays on the controller grid', () => {
    const coarse = { holdMin: 5, holdMax: 97, holdStep: 4 };
    const advice = ask([pull(41, 1)], { controller: coarse });
    expect(((advice.holdPct ?? NaN) - 5) % 4).toBe(0);
  });
  test('gives the same answer twice and leaves a frozen request alone', () => {
    const request = Object.freeze({ ...rest, pulls: Object.freeze([Object.freeze(pull(40, 1))]) });
    expect(adviseGateHold(request)).toEqual(adviseGateHold(request));
  });
  test.each([NaN, Infinity, -Infinity])('refuses %s and names the field', (bad) => {
    expect(() => ask([pull(40, 1, bad)])).toThrow(NotFiniteError);
    expect(() => ask([], { goal: { ...goal, targetKpa: bad } })).toThrow('goal.targetKpa');
    expect(() => ask([], { stepLimit: bad })).toThrow('stepLimit');
  });
  test('refuses a ceiling under the target, a pull outside the range and a reversed range', () => {
    expect(() => ask([], { goal: { ...goal, ceilingKpa: 140 } })).toThrow('goal.ceilingKpa to lie above');
    expect(() => ask([pull(101, 1)])).toThrow(OutOfRangeError);
    expect(() => ask([], { controller: { ...controller, holdMax: -1 } })).toThrow(OutOfRangeError);
    expect(() => ask([{ ...pull(40, 1), riseTimeS: -1 }])).toThrow('pulls[0].riseTimeS');
  });
});
