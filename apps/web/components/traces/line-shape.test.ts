import { describe, expect, test } from 'vitest';
import { lineShape } from './line-shape';
import { testIndexOf } from './test-index';

const ROWS = 120_000;
const RATE_HZ = 100;
/** A slow wave, with one sample that stands out to each side. */
const values = Float32Array.from({ length: ROWS }, (_, row) => Math.sin(row / 900) * 40);
values[77_777] = 500;
values[77_779] = -500;

const shapeOf = async (fromS: number, toS: number, widthPx: number) => {
  const log = testIndexOf([values], RATE_HZ);
  const read = () => lineShape(log.index, log.reader, 0, { window: { fromS, toS }, widthPx });
  await log.frame(read);
  await log.frame(read);
  await log.frame(read);
  return { ...log, shape: read() };
};

describe('lineShape(index, reader, channel, { window, widthPx })', () => {
  test.each([320, 1000, 1900])('keeps a lone sample of the whole log at %i px', async (widthPx) => {
    const { shape } = await shapeOf(0, 1200, widthPx);
    if (shape?.kind !== 'columns') throw new Error('drawn in columns');
    expect(shape.lows).toHaveLength(widthPx);
    expect(Math.max(...shape.highs)).toBe(500);
    expect(Math.min(...shape.lows)).toBe(-500);
    const column = shape.highs.indexOf(500);
    expect(Math.abs(column - (777.77 / 1200) * widthPx)).toBeLessThanOrEqual(2);
    expect(shape.highs.some(Number.isNaN)).toBe(false);
  });

  test('fetches for the width of the picture, not for the length of the log', async () => {
    const { store } = await shapeOf(0, 1200, 1000);
    expect(store.fetchedBytes).toBeLessThan(ROWS * 4);
  });

  test('gives the very samples once there is a pixel for each', async () => {
    const { shape } = await shapeOf(777, 779, 1000);
    if (shape?.kind !== 'points') throw new Error('drawn in points');
    const at = (timeS: number): number | undefined =>
      shape.values[shape.timesS.findIndex((time) => Math.abs(time - timeS) < 1e-9)];
    for (let row = 77_700; row <= 77_900; row += 1) expect(at(row / RATE_HZ)).toBe(values[row]);
  });

  test('is interrupted where samples are missing for long, and drawn through where a channel is slow', async () => {
    const slow = Float32Array.from({ length: 2000 }, (_, row) => (row % 10 === 0 ? row : NaN));
    const holed = slow.map((value, row) => (row > 500 && row < 900 ? NaN : value));
    const log = testIndexOf([holed], RATE_HZ);
    const index = { ...log.index, channels: log.index.channels.map((one) => ({ ...one, intervalS: 0.1 })) };
    const read = () => lineShape(index, log.reader, 0, { window: { fromS: 0, toS: 19 }, widthPx: 2000 });
    await log.frame(read);
    const shape = read();
    if (shape?.kind !== 'points') throw new Error('drawn in points');
    const breaks = shape.values.filter(Number.isNaN);
    expect(breaks).toHaveLength(1);
    expect(shape.timesS[shape.values.findIndex(Number.isNaN)]).toBeCloseTo(9, 9);
  });

  test('is null while nothing has come', () => {
    const { index, reader } = testIndexOf([values], RATE_HZ);
    expect(lineShape(index, reader, 0, { window: { fromS: 0, toS: 9 }, widthPx: 400 })).toBeNull();
  });
});
