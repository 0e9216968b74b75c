import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { NotFiniteError, OutOfRangeError, TooFewPointsError } from '../errors.js';
import { normalQuantile } from '../numerics/index.js';
import { ewmaChart, findDrift, individualsChart, runRules } from './index.js';

fc.configureGlobal({ seed: 20261125 });

const notFinite = [NaN, Infinity, -Infinity];
const peak = fc.double({ min: 130, max: 150, noNaN: true });
const chart = { centre: 140, sd: 1.5 };
const baselineKpa = [139.2, 140.6, 141.1, 139.8, 140.3, 139];

/** A small seeded stream of standard normal numbers, for simulation. */
function normalStream(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return normalQuantile((((mixed ^ (mixed >>> 14)) >>> 0) + 0.5) / 4294967296);
  };
}

describe('ewmaChart', () => {
  test('of values at the centre stays at the centre', () => {
    for (const point of ewmaChart([140, 140, 140], { ...chart, newestWeight: 0.3 })) {
      expect(point).toMatchObject({ plotted: 140, isOut: false });
    }
  });
  test('with weight 1 plots the values themselves between Shewhart limits', () => {
    const points = ewmaChart(Object.freeze([141, 146]), { ...chart, newestWeight: 1 });
    expect(points.map((point) => point.plotted)).toEqual([141, 146]);
    expect(points[1]).toMatchObject({ low: 135.5, high: 144.5, isOut: true });
  });
  test('growing limits start narrower and end at the settled ones', () => {
    fc.assert(
      fc.property(fc.array(peak, { minLength: 30, maxLength: 30 }), (values) => {
        const growing = ewmaChart(values, { ...chart, newestWeight: 0.3, limits: 'growing' });
        const settled = ewmaChart(values, { ...chart, newestWeight: 0.3 });
        expect(growing[0]?.high).toBeLessThan(settled[0]?.high ?? NaN);
        expect(growing.at(-1)?.high ?? NaN).toBeCloseTo(settled.at(-1)?.high ?? NaN, 6);
      }),
    );
  });
  test('has no points for no values and refuses NaN, infinity and a spread of 0', () => {
    expect(ewmaChart([], { ...chart, newestWeight: 0.3 })).toEqual([]);
    for (const bad of notFinite) {
      expect(() => ewmaChart([bad], { ...chart, newestWeight: 0.3 })).toThrow(NotFiniteError);
    }
    expect(() => ewmaChart([1], { centre: 1, sd: 0, newestWeight: 0.3 })).toThrow(OutOfRangeError);
    expect(() => ewmaChart([1], { ...chart, newestWeight: 0 })).toThrow(OutOfRangeError);
  });
});

describe('individualsChart', () => {
  test('moves with a shift and keeps its width', () => {
    fc.assert(
      fc.property(fc.array(peak, { minLength: 2, maxLength: 20 }), (values) => {
        const plain = individualsChart(Object.freeze(values));
        const moved = individualsChart(values.map((value) => value + 7));
        expect(moved.centre).toBeCloseTo(plain.centre + 7, 8);
        expect(moved.high - moved.low).toBeCloseTo(plain.high - plain.low, 8);
      }),
    );
  });
  test('refuses one value and NaN', () => {
    expect(() => individualsChart([])).toThrow(TooFewPointsError);
    expect(() => individualsChart([1])).toThrow(TooFewPointsError);
    for (const bad of notFinite) expect(() => individualsChart([1, bad])).toThrow(NotFiniteError);
  });
});

describe('runRules', () => {
  const rulesAt = (values: number[], index: number): string[] =>
    runRules(values, { centre: 0, sd: 1 })
      .filter((alarm) => alarm.index === index)
      .map((alarm) => alarm.rule);
  test('name the rule that fires, at the value that completes it', () => {
    expect(rulesAt([0, 3.1], 1)).toEqual(['one-beyond-3-sigma']);
    expect(rulesAt([2.1, 0.2, 2.2], 2)).toEqual(['two-of-three-beyond-2-sigma']);
    expect(rulesAt([1.1, 1.2, -0.3, 1.4, 1.3], 4)).toEqual(['four-of-five-beyond-1-sigma']);
    expect(rulesAt([0.1, 0.2, 0.3, 0.1, 0.2, 0.4, 0.3, 0.2], 7)).toEqual(['eight-on-one-side']);
    expect(rulesAt([0.1, 0.2, 0.3, -0.1, 0.2, 0.4, 0.3, 0.2], 7)).toEqual([]);
  });
  test('tell the low side from the high one and are quiet on exact centre values', () => {
    expect(runRules([-4], { centre: 0, sd: 1 })).toEqual([
      { index: 0, rule: 'one-beyond-3-sigma', side: 'low' },
    ]);
    expect(runRules(new Array<number>(10).fill(5), { centre: 5, sd: 1 })).toEqual([]);
    expect(runRules([], chart)).toEqual([]);
  });
  test('refuse NaN and a spread of 0', () => {
    for (const bad of notFinite) expect(() => runRules([bad], chart)).toThrow(NotFiniteError);
    expect(() => runRules([1], { centre: 0, sd: 0 })).toThrow(OutOfRangeError);
  });
});

describe('findDrift', () => {
  test('is quiet without recent pulls and on pulls like the baseline', () => {
    expect(findDrift({ baselineKpa, recentKpa: [] })).toMatchObject({
      isDrifting: false,
      rule: null,
      driftPct: 0,
    });
    expect(findDrift({ baselineKpa, recentKpa: [140.4, 139.5, 141, 140] }).isDrifting).toBe(false);
  });
  test('names the rule: a jump by its first pull, a creep by the moving average', () => {
    const jump = findDrift({ baselineKpa, recentKpa: [150, 150] });
    expect(jump).toMatchObject({ isDrifting: true, rule: 'shewhart-single-pull', firedAt: 0 });
    expect(jump.driftPct).toBeGreaterThan(6);
    const creep = findDrift({ baselineKpa, recentKpa: [143.4, 144.4, 144.8, 145.2, 145.2, 145.6] });
    expect(creep).toMatchObject({ isDrifting: true, rule: 'ewma-moving-average' });
  });
  test('a shift of all pulls by one factor changes nothing', () => {
    fc.assert(
      fc.property(fc.array(peak, { minLength: 1, maxLength: 12 }), (recentKpa) => {
        const plain = findDrift({
          baselineKpa: Object.freeze(baselineKpa),
          recentKpa: Object.freeze(recentKpa),
        });
        const scaled = findDrift({
          baselineKpa: baselineKpa.map((value) => value * 1.3),
          recentKpa: recentKpa.map((value) => value * 1.3),
        });
        expect(scaled.firedAt).toBe(plain.firedAt);
        expect(scaled.driftPct).toBeCloseTo(plain.driftPct, 6);
      }),
    );
  });
  test('finds a drift of 4 % within 4 pulls at the median with at most one false alarm in 370 pulls', () => {
    const normal = normalStream(7);
    const peaksAround = (meanKpa: number, count: number): number[] =>
      Array.from({ length: count }, () => meanKpa * (1 + 0.012 * normal()));
    const found: number[] = [];
    let [alarms, quietPulls] = [0, 0];
    for (let car = 0; car < 400; car += 1) {
      const baseline = peaksAround(140, 6);
      const pooled = { sd: 0.012 * 140, degreesOfFreedom: 40 };
      const quiet = findDrift({ baselineKpa: baseline, recentKpa: peaksAround(140, 20), pooled });
      alarms += quiet.isDrifting ? 1 : 0;
      quietPulls += (quiet.firedAt ?? 19) + 1;
      const fallen = findDrift({ baselineKpa: baseline, recentKpa: peaksAround(0.96 * 140, 20), pooled });
      found.push((fallen.firedAt ?? Infinity) + 1);
    }
    found.sort((a, b) => a - b);
    expect(found[200]).toBeLessThanOrEqual(4);
    expect(alarms / quietPulls).toBeLessThanOrEqual(1 / 370);
  });
  test('refuses a baseline of one pull, NaN, infinity and a pooled spread of 0', () => {
    expect(() => findDrift({ baselineKpa: [140], recentKpa: [] })).toThrow(TooFewPointsError);
    expect(() => findDrift({ baselineKpa: [], recentKpa: [] })).toThrow(TooFewPointsError);
    for (const bad of notFinite) {
      expect(() => findDrift({ baselineKpa, recentKpa: [bad] })).toThrow(NotFiniteError);
      expect(() => findDrift({ baselineKpa: [140, bad], recentKpa: [] })).toThrow(NotFiniteError);
    }
    const pooled = { sd: 0, degreesOfFreedom: 5 };
    expect(() => findDrift({ baselineKpa, recentKpa: [], pooled })).toThrow(OutOfRangeError);
    expect(() => findDrift({ baselineKpa: [0, 0], recentKpa: [] })).toThrow(OutOfRangeError);
  });
});
