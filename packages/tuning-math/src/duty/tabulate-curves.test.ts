import { describe, expect, it } from 'vitest';
import { OutOfRangeError } from '../errors.js';
import { tabulateCurves, TABLE_POINTS } from './tabulate-curves.js';

/** A straight rise that makes the target at full duty: by hand, 0.01 a point of duty, 1 in all. */
const straight = Float64Array.from({ length: TABLE_POINTS }, (_, duty) => duty / 100);

describe('tabulateCurves(scaled)', () => {
  it('lays each curve in a row, with the logs of its whole and of its steepest rise', () => {
    const flat = new Float64Array(TABLE_POINTS);
    const { count, rises, logWholes, logSteepest } = tabulateCurves([flat, straight]);
    expect(count).toBe(2);
    expect(rises[TABLE_POINTS + 50]).toBeCloseTo(0.5, 6);
    expect(logWholes[1]).toBeCloseTo(0, 9);
    expect(logSteepest[1]).toBeCloseTo(Math.log(0.01), 9);
    expect(Number.isFinite(logWholes[0]) && Number.isFinite(logSteepest[0])).toBe(true);
  });

  it('refuses a curve that does not tell its rise at every duty, which would shift those after it', () => {
    expect(() => tabulateCurves([straight, straight.subarray(0, 100)])).toThrow(OutOfRangeError);
  });
});
