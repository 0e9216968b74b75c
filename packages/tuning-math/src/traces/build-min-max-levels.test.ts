import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { buildMinMaxLevels } from './build-min-max-levels.js';
import { LEVEL_FACTOR, levelShapes, TILE_BINS } from './level-shapes.js';

/** Lowest and highest of a stretch as a person would look for them. */
function extremesOf(values: Float32Array): [number, number] {
  const sorted = [...values].filter((value) => !Number.isNaN(value)).sort((a, b) => a - b);
  return [sorted[0] ?? NaN, sorted.at(-1) ?? NaN];
}

function wave(count: number): Float32Array {
  return Float32Array.from({ length: count }, (_, row) => Math.sin(row / 37) * 50 + ((row * 7919) % 101));
}

describe('buildMinMaxLevels(values)', () => {
  test.each([TILE_BINS + 1, 3 * TILE_BINS + 5, 20 * TILE_BINS + 17, 100_003])(
    'keeps lowest and highest of every bin at every level of %i rows',
    (count) => {
      const values = wave(count);
      values[count >> 1] = 1e6;
      values[(count >> 1) + 3] = -1e6;
      const levels = buildMinMaxLevels(values);
      expect(levels.length).toBeGreaterThan(0);
      for (const { rowsPerBin, lows, highs } of levels) {
        expect(lows).toHaveLength(Math.ceil(count / rowsPerBin));
        lows.forEach((low, bin) => {
          const [lowest, highest] = extremesOf(values.subarray(bin * rowsPerBin, (bin + 1) * rowsPerBin));
          if (low !== lowest || highs[bin] !== highest) {
            expect.fail(`bin ${bin} of ${rowsPerBin} rows: ${low}..${highs[bin]}, not ${lowest}..${highest}`);
          }
        });
        expect(Math.max(...highs)).toBe(1e6);
        expect(Math.min(...lows)).toBe(-1e6);
      }
    },
  );

  test('passes over missing samples, and says NaN where a bin holds none', () => {
    const values = new Float32Array(2 * TILE_BINS).fill(NaN);
    values[5] = -3;
    values[6] = 4;
    const [first] = buildMinMaxLevels(values);
    expect([first?.lows[1], first?.highs[1]]).toEqual([-3, 4]);
    expect([first?.lows[0], first?.highs[2]]).toEqual([NaN, NaN]);
  });

  test('makes no level of what fits one tile, and none of nothing', () => {
    expect(buildMinMaxLevels(new Float32Array(0))).toEqual([]);
    expect(buildMinMaxLevels(wave(TILE_BINS))).toEqual([]);
    expect(buildMinMaxLevels(wave(TILE_BINS + 1))).toHaveLength(1);
  });

  test('a shift or a turn of all samples shifts or turns every level', () => {
    const length = TILE_BINS + 40;
    fc.assert(
      fc.property(fc.float32Array({ minLength: length, maxLength: length, noNaN: true }), (values) => {
        const [level] = buildMinMaxLevels(values);
        const [turned] = buildMinMaxLevels(values.map((value) => -value));
        expect(turned?.lows).toEqual(level?.highs.map((value) => -value));
      }),
      { numRuns: 20 },
    );
  });
});

describe('levelShapes(rowCount)', () => {
  test('ends at the first level that fits one tile', () => {
    for (const rowCount of [0, 1, TILE_BINS, TILE_BINS + 1, 1_000_000, 7_654_321]) {
      const shapes = levelShapes(rowCount);
      expect(shapes[0]).toEqual({ rowsPerBin: 1, binCount: rowCount });
      expect(shapes.at(-1)?.binCount).toBeLessThanOrEqual(TILE_BINS);
      expect(shapes.filter(({ binCount }) => binCount <= TILE_BINS)).toHaveLength(1);
      shapes.slice(1).forEach(({ rowsPerBin, binCount }, index) => {
        expect(rowsPerBin).toBe(LEVEL_FACTOR ** (index + 1));
        expect(binCount).toBe(Math.ceil(rowCount / rowsPerBin));
      });
    }
  });

  test.each([-1, 1.5, NaN, Infinity])('throws RangeError for %d rows', (rowCount) => {
    expect(() => levelShapes(rowCount)).toThrow(RangeError);
  });
});
