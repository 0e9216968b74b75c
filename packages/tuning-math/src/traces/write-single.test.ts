import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { pickLevel } from './pick-level.js';
import { levelShapes } from './level-shapes.js';
import { writeSingle } from './write-single.js';

describe('writeSingle(value)', () => {
  test('reads back as the very same single, whatever it is', () => {
    fc.assert(
      fc.property(fc.float({ noNaN: true, noDefaultInfinity: true }), (value) => {
        expect(Math.fround(Number(writeSingle(value)))).toBe(value === 0 ? 0 : value);
      }),
      { numRuns: 5000 },
    );
  });

  // Largest, smallest normal and smallest of single precision, IEEE 754-2019, table 3.5 (binary32).
  test.each([3.4028234663852886e38, 1.1754943508222875e-38, 1.401298464324817e-45, 16777216, -16777215])(
    'reads back %d',
    (value) => expect(Math.fround(Number(writeSingle(value)))).toBe(value),
  );

  test('is as short as the logger wrote it, and empty where there is no sample', () => {
    expect(writeSingle(Math.fround(98.2))).toBe('98.2');
    expect(writeSingle(Math.fround(-0.05))).toBe('-0.05');
    expect(writeSingle(3200)).toBe('3200');
    expect(writeSingle(NaN)).toBe('');
  });
});

describe('pickLevel(levels, rowsPerPixel)', () => {
  const levels = levelShapes(1_000_000);
  test('takes the coarsest level with a bin for each pixel', () => {
    expect(pickLevel(levels, 0.01)).toBe(0);
    expect(pickLevel(levels, 3.99)).toBe(0);
    expect(pickLevel(levels, 4)).toBe(1);
    expect(pickLevel(levels, 63)).toBe(2);
    expect(pickLevel(levels, 1e9)).toBe(levels.length - 1);
  });
});
