import { describe, expect, it } from 'vitest';
import { mendTime } from './mend-time.js';

const mended = (times: readonly number[], isClock = false): number[] => [
  ...mendTime(Float64Array.from(times), isClock).timeS,
];

describe('mendTime', () => {
  it('leaves rising times as they are and keeps all rows', () => {
    expect(mendTime(Float64Array.of(0, 0.1, 0.2), false)).toMatchObject({
      keep: null,
      untimedRows: 0,
      repeatedRows: 0,
      restarts: 0,
    });
    expect(mended([0, 0.1, 0.2])).toEqual([0, 0.1, 0.2]);
  });

  it('leaves out rows without a time and rows that repeat one, and counts them', () => {
    const result = mendTime(Float64Array.of(0, NaN, 1, 1, 2), false);
    expect([...(result.keep ?? [])]).toEqual([0, 2, 4]);
    expect(result).toMatchObject({ untimedRows: 1, repeatedRows: 1 });
  });

  it('goes on past midnight', () => {
    expect(mended([86_399, 86_399.5, 0, 0.5], true)).toEqual([86_399, 86_399.5, 86_400, 86_400.5]);
  });

  it('puts a new start of the logger a minute behind the old one', () => {
    const result = mendTime(Float64Array.of(0, 1, 2, 0, 1, 2), false);
    expect([...result.timeS]).toEqual([0, 1, 2, 62, 63, 64]);
    expect(result.restarts).toBe(1);
  });

  it('spreads rows that share the stamp of a coarse clock, the last stamp too', () => {
    expect(mended([5, 5, 5, 5, 6, 6, 6, 6])).toEqual([5, 5.25, 5.5, 5.75, 6, 6.25, 6.5, 6.75]);
  });

  it('drops a lone stamp out of line', () => {
    expect(mended([0, 1, 9999, 2, 3])).toEqual([0, 1, 2, 3]);
    expect(mended([0, 1, -50, 2, 3])).toEqual([0, 1, 2, 3]);
  });

  it.each([[[]], [[7]], [[NaN, NaN]]])('makes no times up for %j', (times) => {
    expect(mended(times)).toEqual(times.filter((time) => !Number.isNaN(time)));
  });
});
