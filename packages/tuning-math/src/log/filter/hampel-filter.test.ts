import { describe, expect, it } from 'vitest';
import {
  NotFiniteError,
  NotStrictlyIncreasingError,
  OutOfRangeError,
  TooFewPointsError,
} from '../../errors.js';
import { hampelFilter, median } from './hampel-filter.js';

const OPTIONS = { halfWindowS: 3, leastSideSamples: 3, threshold: 3, leastDistance: 0 };
const seconds = (length: number): Float64Array => Float64Array.from({ length }, (_, index) => index);

describe('hampelFilter', () => {
  it('judges by median 2 and scaled deviation 1.4826 in the set 1 1 2 2 4 6 9', () => {
    // Middle sample moved through 2 ± 3 · 1.4826: the others keep median 2 and deviation 1.
    const around = [1, 1, 2, 0, 2, 4, 6];
    const at = (value: number): number => {
      const values = Float64Array.from(around, (other, index) => (index === 3 ? value : other));
      return hampelFilter({ timeS: seconds(7), values }, OPTIONS).values[3] ?? NaN;
    };
    expect(at(6.4)).toBe(6.4);
    expect(at(6.5)).toBe(2);
  });

  it('replaces a lone spike and says where it was', () => {
    const values = Float64Array.from({ length: 21 }, (_, index) =>
      index === 10 ? 900 : 100 + Math.sin(index),
    );
    const result = hampelFilter({ timeS: seconds(21), values }, { ...OPTIONS, leastDistance: 4 });
    expect(result.spikeIndexes).toEqual([10]);
    expect(result.values[10]).toBeLessThan(102);
  });

  it('leaves a ramp alone, its ends too', () => {
    const values = Float64Array.from({ length: 30 }, (_, index) => 7 * index);
    const result = hampelFilter({ timeS: seconds(30), values }, { ...OPTIONS, threshold: 4 });
    expect([...result.values]).toEqual([...values]);
  });

  it('throws typed errors for empty, unordered and non-finite input and a negative window', () => {
    const good = { timeS: seconds(3), values: seconds(3) };
    expect(() => hampelFilter({ timeS: seconds(0), values: seconds(0) }, OPTIONS)).toThrow(TooFewPointsError);
    expect(() => hampelFilter({ ...good, values: Float64Array.of(1, NaN, 2) }, OPTIONS)).toThrow(
      NotFiniteError,
    );
    expect(() => hampelFilter({ ...good, timeS: Float64Array.of(0, 0, 1) }, OPTIONS)).toThrow(
      NotStrictlyIncreasingError,
    );
    expect(() => hampelFilter(good, { ...OPTIONS, halfWindowS: -1 })).toThrow(OutOfRangeError);
  });
});

describe('median', () => {
  it.each([
    { values: [3], middle: 3 },
    { values: [3, 1], middle: 2 },
    { values: [9, 1, 2], middle: 2 },
  ])('of $values is $middle', ({ values, middle }) => {
    expect(median(Float64Array.from(values))).toBe(middle);
  });
});
