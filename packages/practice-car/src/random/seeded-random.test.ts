import { NotFiniteError } from '@pullbook/tuning-math';
import { describe, expect, it } from 'vitest';
import { drawNormal, drawOne, seededRandom, xoshiro128 } from './index.js';

describe('xoshiro128', () => {
  it('gives the published sequence from the state 1, 2, 3, 4', () => {
    // Source: the reference vector of the xoshiro128** algorithm, as public test suites carry it.
    const next = xoshiro128([1, 2, 3, 4]);
    expect(Array.from({ length: 10 }, next)).toEqual([
      11520, 0, 5927040, 70819200, 2031721883, 1637235492, 1287239034, 3734860849, 3729100597, 4258142804,
    ]);
  });
});

describe('seededRandom', () => {
  it('repeats bit for bit for one seed and differs for the next', () => {
    const take = (seed: number): number[] => Array.from({ length: 50 }, seededRandom(seed));
    expect(take(41)).toEqual(take(41));
    expect(take(41)).not.toEqual(take(42));
    expect(take(1)).not.toEqual(take(1 + 2 ** 32));
  });

  it('stays within 0 and 1 with the mean and variance of an even distribution', () => {
    const random = seededRandom(3);
    const drawn = Array.from({ length: 40_000 }, random);
    const mean = drawn.reduce((sum, value) => sum + value, 0) / drawn.length;
    const variance = drawn.reduce((sum, value) => sum + (value - mean) ** 2, 0) / drawn.length;
    expect(Math.min(...drawn)).toBeGreaterThanOrEqual(0);
    expect(Math.max(...drawn)).toBeLessThan(1);
    // Four standard errors: 1/sqrt(12 n) for the mean, 1/sqrt(180 n) for the variance.
    expect(Math.abs(mean - 0.5)).toBeLessThan(4 / Math.sqrt(12 * drawn.length));
    expect(Math.abs(variance - 1 / 12)).toBeLessThan(4 / Math.sqrt(180 * drawn.length));
  });

  it('refuses a seed that is not a finite number', () => {
    expect(() => seededRandom(Number.NaN)).toThrow(NotFiniteError);
  });
});

describe('drawNormal', () => {
  it('has mean 0, variance 1 and the normal share within one standard deviation', () => {
    const random = seededRandom(5);
    const drawn = Array.from({ length: 40_000 }, () => drawNormal(random));
    const mean = drawn.reduce((sum, value) => sum + value, 0) / drawn.length;
    const variance = drawn.reduce((sum, value) => sum + value ** 2, 0) / drawn.length;
    const within = drawn.filter((value) => Math.abs(value) < 1).length / drawn.length;
    expect(Math.abs(mean)).toBeLessThan(0.02);
    expect(Math.abs(variance - 1)).toBeLessThan(0.03);
    expect(Math.abs(within - 0.682689)).toBeLessThan(0.01);
  });
});

describe('drawOne', () => {
  it('refuses an empty list and otherwise yields every choice', () => {
    const random = seededRandom(6);
    expect(() => drawOne(random, [])).toThrow('at least one');
    expect(new Set(Array.from({ length: 60 }, () => drawOne(random, ['a', 'b', 'c']))).size).toBe(3);
  });
});
