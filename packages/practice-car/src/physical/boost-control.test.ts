import { describe, expect, it } from 'vitest';
import { controlBoost, INTEGRAL_PCT_PER_KPA_S, PROPORTIONAL_PCT_PER_KPA } from './boost-control.js';

const settings = { dutyPct: 40, gateHoldPct: 0, targetKpa: 100, correctionStrength: 0 };

describe('controlBoost', () => {
  it('keeps to its duty in open loop whatever the boost', () => {
    const control = controlBoost(settings);
    expect([0, 60, 100, 180].map((boost) => control(boost, 0.03))).toEqual([40, 40, 40, 40]);
  });

  it('energises throughout until boost reaches the gate hold, then for good, and again after boost has gone', () => {
    const control = controlBoost({ ...settings, gateHoldPct: 80 });
    expect([0, 50, 79.9, 80, 70, 40].map((boost) => control(boost, 0.03))).toEqual([
      100, 100, 100, 40, 40, 40,
    ]);
    expect(control(20, 0.03)).toBe(100);
  });

  it('never corrects by more than 25 points nor out of 0 to 100', () => {
    const control = controlBoost({ ...settings, dutyPct: 10, correctionStrength: 20 });
    for (let i = 0; i < 200; i++) expect(control(130, 0.03)).toBeGreaterThanOrEqual(0);
    const upwards = controlBoost({ ...settings, correctionStrength: 20 });
    for (let i = 0; i < 200; i++) expect(upwards(75, 0.03)).toBeLessThanOrEqual(65);
  });

  it('decays about the target with the damping ratio that second-order theory gives', () => {
    // PI around a first-order plant K / (T s + 1): w^2 = K I / T, 2 z w = (1 + K P) / T. Successive extremes of opposite
    // sign shrink by exp(-pi z / sqrt(1 - z^2)) (logarithmic decrement), whatever the zero does to the first one.
    const gainKpaPerPct = 2;
    const lagS = 2;
    const strength = 20;
    const natural = Math.sqrt((gainKpaPerPct * strength * INTEGRAL_PCT_PER_KPA_S) / lagS);
    const damping = (1 + gainKpaPerPct * strength * PROPORTIONAL_PCT_PER_KPA) / lagS / (2 * natural);
    const control = controlBoost({ ...settings, dutyPct: 49, correctionStrength: strength });
    const stepS = 0.0005;
    const extremes: number[] = [];
    let boost = 98;
    let rate = 0;
    for (let i = 0; i * stepS < 6; i++) {
      const before = rate;
      rate = (gainKpaPerPct * control(boost, stepS) - boost) / lagS;
      if (before * rate < 0) extremes.push(boost - 100);
      boost += rate * stepS;
    }
    const [first = 0, second = 0, third = 0] = extremes;
    const shrink = Math.exp((-Math.PI * damping) / Math.sqrt(1 - damping * damping));
    expect(damping).toBeGreaterThan(0.3);
    expect(Math.abs(-second / first / shrink - 1)).toBeLessThan(0.02);
    expect(Math.abs(-third / second / shrink - 1)).toBeLessThan(0.02);
  });
});
