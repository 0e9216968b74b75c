import { describe, expect, test } from 'vitest';
import { lanesOf } from './lanes-of';
import { laneSpan } from './lane-scale';
import { lineLook } from './line-look';
import { testIndexOf, testPull } from './test-index';
import { firstState } from './trace-state';

const flat = new Float32Array(100).fill(3);
const { index } = testIndexOf([flat, flat, flat, flat], 10, [testPull(0), testPull(1)]);
const state = { ...firstState(index, null, false), channels: [3, 0, 2, 1] };

describe('lanesOf(index, state)', () => {
  test('along the log: what has a unit in common shares a lane, bare numbers stand alone', () => {
    const lanes = lanesOf(index, state);
    expect(lanes.map(({ lines }) => lines.map(({ channel }) => channel))).toEqual([[0, 1], [2], [3]]);
  });

  test('compared: a lane for each channel with a line for each pull', () => {
    const lanes = lanesOf(index, { ...state, mode: 'compare', pulls: [0, 1] });
    expect(lanes).toHaveLength(4);
    expect(lanes[0]?.lines.map(({ pull, label }) => [pull, label])).toEqual([
      [0, '1: at 5.0 s'],
      [1, '2: at 15.0 s'],
    ]);
  });

  test('neighbours differ by dashes, so that nobody needs the colour', () => {
    const dashes = Array.from({ length: 6 }, (_, position) => lineLook(position).dash.join());
    expect(new Set(dashes).size).toBe(6);
  });
});

describe('laneSpan(index, lane, figures)', () => {
  test('leaves room, and lets a single wild sample run out', () => {
    const [lane] = lanesOf(index, { ...state, channels: [2] });
    if (lane === undefined) throw new Error('no lane');
    const facts = { lowest: -900, highest: 4000, usualLow: 1000, usualHigh: 2000 };
    const channels = index.channels.map((channel) => ({ ...channel, ...facts }));
    expect(laneSpan({ ...index, channels }, lane, [])).toEqual({ low: 940, high: 2060 });
    expect(laneSpan({ ...index, channels }, lane, [2500]).high).toBeGreaterThan(2500);
  });
});
