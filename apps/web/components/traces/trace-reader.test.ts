import { describe, expect, test } from 'vitest';
import { testIndexOf, testPull } from './test-index';
import { onsetOfPull } from './onset-of-pull';

const ROWS = 50_000;
const ramp = Float32Array.from({ length: ROWS }, (_, row) => row / 10);

async function loaded(channels: readonly Float32Array[]) {
  const log = testIndexOf(channels, 100, [testPull(0, { startS: 5, endS: 40, settledKpa: 200 })]);
  await log.frame(() => void log.reader.rowsOf(0, 1));
  return log;
}

describe('TraceReader', () => {
  test('reads the sample at a moment, and says a range while only its bin is here', async () => {
    const log = await loaded([ramp]);
    await log.frame(() => log.reader.visit(0, { first: 0, end: ROWS }, 2, () => undefined));
    expect(log.reader.readAt(0, 123.4, false)).toEqual({
      low: ramp[12_336],
      high: ramp[12_351],
      isExact: false,
    });
    await log.frame(() => void log.reader.readAt(0, 123.4, true));
    expect(log.reader.readAt(0, 123.406, false)).toEqual({ low: 1234, high: 1234, isExact: true });
  });

  test('walks from sample to sample and over the edge of a tile, and stops at the ends', async () => {
    const log = await loaded([ramp]);
    const edge = 40.95;
    await log.frame(() => void log.reader.rowTimeFrom(edge, 1));
    await log.frame(() => void log.reader.rowTimeFrom(edge, 1));
    expect(log.reader.rowTimeFrom(edge, 1)).toBeCloseTo(40.96, 9);
    expect(log.reader.rowTimeFrom(edge, -1)).toBeCloseTo(40.94, 9);
    await log.frame(() => void log.reader.rowTimeFrom(0, -5));
    expect(log.reader.rowTimeFrom(0, -5)).toBe(0);
    expect(log.reader.rowTimeNear(40.9549, false)).toBeCloseTo(40.95, 9);
    expect(log.reader.rowTimeNear(40.9551, true)).toBeCloseTo(40.96, 9);
  });
});

describe('onsetOfPull(index, reader, number, alignment)', () => {
  test('is the start of full load, or where 90 % is first reached, between samples', async () => {
    const log = await loaded([ramp, ramp]);
    expect(onsetOfPull(log.index, log.reader, 0, 'full-load')).toEqual({ timeS: 5, basis: 'full-load' });
    expect(onsetOfPull(log.index, log.reader, 0, 'target')).toBeNull();
    await log.frame(() => void onsetOfPull(log.index, log.reader, 0, 'target'));
    // The ramp rises by 10 a second: 90 % of 200 is reached at 18 s, that of a target of 150.5 at 13.545 s.
    expect(onsetOfPull(log.index, log.reader, 0, 'target')).toEqual({
      timeS: expect.closeTo(18, 6),
      basis: 'settled',
    });
    const record = { pullId: 'x', number: 1, presetId: 'x', presetName: 'x', dutyPct: 30 };
    const goal = { targetKpa: 150.5, toleranceKpa: 4, ceilingKpa: 170 };
    const pulls = log.index.pulls.map((pull) => ({ ...pull, record: { ...record, ...goal } }));
    expect(onsetOfPull({ ...log.index, pulls }, log.reader, 0, 'target')).toEqual({
      timeS: expect.closeTo(13.545, 4),
      basis: 'target',
    });
  });

  test('is null where the pull never got so far', async () => {
    const log = await loaded([ramp, ramp]);
    const pulls = log.index.pulls.map((pull) => ({ ...pull, settledKpa: 900 }));
    await log.frame(() => void onsetOfPull({ ...log.index, pulls }, log.reader, 0, 'target'));
    expect(onsetOfPull({ ...log.index, pulls }, log.reader, 0, 'target')).toBeNull();
  });
});
