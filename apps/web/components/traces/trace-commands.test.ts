import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { testIndexOf, testPull } from './test-index';
import { keepInside, moveWindow, zoomWindow, type WindowBounds } from './time-window';
import { commandOfKey, runCommand, traceKeys, type TraceCommand } from './trace-commands';
import { firstState, type TraceState } from './trace-state';

const bounds: WindowBounds = { all: { fromS: 2, toS: 102 }, leastS: 0.5 };
const moment = fc.double({ min: 2, max: 102, noNaN: true });

describe('zoomWindow and moveWindow', () => {
  test('stay inside the log and no closer than the samples, whatever is asked', () => {
    fc.assert(
      fc.property(moment, moment, fc.double({ min: 1e-6, max: 1e6, noNaN: true }), (a, b, factor) => {
        const start = keepInside({ fromS: Math.min(a, b), toS: Math.max(a, b) }, bounds);
        for (const next of [zoomWindow(start, factor, a, bounds), moveWindow(start, factor - 50, bounds)]) {
          expect(next.fromS).toBeGreaterThanOrEqual(2 - 1e-9);
          expect(next.toS).toBeLessThanOrEqual(102 + 1e-9);
          expect(next.toS - next.fromS).toBeGreaterThanOrEqual(0.5 - 1e-9);
        }
      }),
    );
  });

  test('the moment zoomed about stays where it is on the screen', () => {
    const next = zoomWindow({ fromS: 20, toS: 60 }, 0.5, 30, bounds);
    expect((30 - next.fromS) / (next.toS - next.fromS)).toBeCloseTo(0.25, 12);
    expect(next.toS - next.fromS).toBeCloseTo(20, 12);
  });
});

describe('runCommand(command, place)', () => {
  const values = Float32Array.from({ length: 4000 }, (_, row) => row);
  const pulls = [testPull(0), testPull(1), testPull(2)];

  async function place(state: Partial<TraceState> = {}) {
    const { index, reader, frame } = testIndexOf([values], 100, pulls);
    await frame(() => void reader.rowTimeNear(1, true));
    const given = { index, reader, widthPx: 800, state: { ...firstState(index, null, false), ...state } };
    return (command: TraceCommand) => runCommand(command, given);
  }

  test('opens at the asked pull, else at the first, else with the whole log', () => {
    const { index } = testIndexOf([values], 100, pulls);
    expect(firstState(index, 2, false)).toMatchObject({ window: { fromS: 24, toS: 32 }, cursorS: 25 });
    expect(firstState(index, null, false).cursorS).toBe(5);
    expect(firstState({ ...index, pulls: [] }, null, false).window).toEqual({ fromS: 0, toS: 39.99 });
  });

  test('goes to the next pull and the one before, and stays at the last', async () => {
    expect((await place({ cursorS: 5 }))('next-pull').cursorS).toBe(15);
    expect((await place({ cursorS: 15 }))('previous-pull').cursorS).toBe(5);
    expect((await place({ cursorS: 25 }))('next-pull').cursorS).toBe(25);
    expect((await place({ cursorS: 5 }))('previous-pull').cursorS).toBe(5);
  });

  test('moves the cursor by one sample when zoomed in, by one pixel when not', async () => {
    const near = await place({ cursorS: 20, window: { fromS: 19.9, toS: 20.2 } });
    expect(near('cursor-right').cursorS).toBeCloseTo(20.01, 9);
    expect(near('cursor-far-left').cursorS).toBeCloseTo(19.9, 9);
    const far = await place({ cursorS: 20, window: { fromS: 0, toS: 39.99 } });
    expect(far('cursor-right').cursorS).toBeCloseTo(20 + 39.99 / 800, 9);
  });

  test('brings the cursor into sight at either end', async () => {
    const run = await place({ cursorS: 20, window: { fromS: 18, toS: 22 } });
    const end = run('to-end');
    expect(end.cursorS).toBe(39.99);
    expect(end.window?.toS).toBeCloseTo(39.99, 9);
    expect(run('to-start')).toMatchObject({ cursorS: 0, window: { fromS: 0 } });
    expect(run('whole').window).toEqual({ fromS: 0, toS: 39.99 });
  });

  test('every key of the help does what it says, and others nothing', () => {
    for (const { keys, shift, command } of traceKeys) {
      for (const key of keys) expect(commandOfKey(key, shift ?? false)).toBe(command);
    }
    // A plus needs Shift on many keyboards.
    expect(commandOfKey('+', true)).toBe('zoom-in');
    expect(commandOfKey('N', true)).toBe('next-pull');
    expect(commandOfKey('Tab', false)).toBeNull();
    expect(commandOfKey('q', false)).toBeNull();
  });
});
