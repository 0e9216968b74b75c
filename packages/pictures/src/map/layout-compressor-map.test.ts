import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { NotDrawableError } from '../errors.js';
import type { TextShape } from '../figures/shapes.js';
import { outOfBounds, overlaps } from '../figures/test-picture.js';
import { mapIslands } from './map-islands.js';
import { layoutCompressorMap, type MapFigures, type MapSpot } from './index.js';

const spot = (flowKgPerS: number, pressureRatio: number): MapSpot => ({ flowKgPerS, pressureRatio });
const figures: MapFigures = {
  lines: [
    {
      shaftSpeedRpm: 60_000,
      spots: [spot(0.04, 1.4), spot(0.08, 1.36), spot(0.12, 1.2)],
      efficienciesPct: [66, 74, 60],
    },
    {
      shaftSpeedRpm: 100_000,
      spots: [spot(0.06, 2), spot(0.14, 1.92), spot(0.2, 1.6)],
      efficienciesPct: [66, 76, 60],
    },
    {
      shaftSpeedRpm: 140_000,
      spots: [spot(0.1, 2.9), spot(0.2, 2.75), spot(0.28, 2.2)],
      efficienciesPct: [64, 73, 58],
    },
  ],
  goals: [{ letter: 'A', name: 'Dry, target 100 kPa', spots: [spot(0.09, 2.08), spot(0.18, 2.08)] }],
  pulls: [
    {
      ...{ number: 7, name: 'Dry', isOutside: false, standing: 'inside' },
      spots: [spot(0.06, 1.4), spot(0.11, 2.05), spot(0.17, 2)],
      peak: spot(0.11, 2.05),
    },
  ],
};
const size = { width: 560, height: 380 };
const textsOf = (one: MapFigures): readonly string[] =>
  layoutCompressorMap(one, size)
    .shapes.filter((shape): shape is TextShape => shape.kind === 'text')
    .map(({ text }) => text);

describe('layoutCompressorMap(figures, size)', () => {
  it('draws speed lines, surge and choke, the engine’s line and the pull, each with its word', () => {
    const roles = layoutCompressorMap(figures, size).shapes.map(({ role }) => role);
    expect(roles.filter((role) => role === 'speed-line')).toHaveLength(3);
    expect(roles).toEqual(expect.arrayContaining(['surge', 'choke', 'beyond', 'goal-line', 'trail', 'pull']));
    expect(textsOf(figures)).toEqual(
      expect.arrayContaining(['7', 'A', '60k', '100k', '140k', 'surge', 'choke', 'corrected flow, kg/s']),
    );
  });

  it('puts more flow further right and a higher ratio further up', () => {
    const { shapes } = layoutCompressorMap(figures, size);
    const trail = shapes.find(({ role }) => role === 'trail');
    if (trail?.kind !== 'path') throw new Error('no trail');
    const points = [...trail.d.matchAll(/[ML]([\d.]+) ([\d.]+)/g)].map(([, x, y]) => [Number(x), Number(y)]);
    const [first, second] = points as [[number, number], [number, number]];
    expect(second[0]).toBeGreaterThan(first[0]);
    expect(second[1]).toBeLessThan(first[1]);
  });

  it('draws lines of equal efficiency where the efficiency on them is that', () => {
    const { shapes } = layoutCompressorMap(figures, size);
    const islands = shapes.filter(({ role }) => role === 'island');
    expect(islands.length).toBeGreaterThan(1);
    expect(textsOf(figures)).toEqual(expect.arrayContaining(['70 %']));
    const [seventy] = mapIslands(figures.lines).filter(({ text }) => text === '70 %');
    // On the slowest line efficiency runs from 66 at 0.04 kg/s to 74 at 0.08: 70 lies half way.
    const onSlowest =
      seventy?.pieces.flat().filter(({ flowKgPerS }) => Math.abs(flowKgPerS - 0.06) < 1e-9) ?? [];
    expect(onSlowest.some(({ pressureRatio }) => Math.abs(pressureRatio - 1.38) < 1e-9)).toBe(true);
    const bare = figures.lines.map((line, index) =>
      index === 0 ? { ...line, efficienciesPct: null } : line,
    );
    expect(mapIslands(bare)).toEqual([]);
  });

  it('marks a pull that leaves the map by a square and says so in words', () => {
    const pulls = figures.pulls.map((pull) => ({ ...pull, isOutside: true, standing: 'beyond surge' }));
    const picture = layoutCompressorMap({ ...figures, pulls }, size);
    expect(picture.shapes.some(({ role }) => role === 'over')).toBe(true);
    expect(picture.description).toContain('leaving it: 7');
    expect(picture.table.rows[0]).toEqual(['pull 7, Dry', '0.110', '2.05', '', 'beyond surge']);
  });

  it('refuses what cannot be drawn, naming it', () => {
    const lines = [{ shaftSpeedRpm: 1, spots: [spot(NaN, 2)], efficienciesPct: null }];
    expect(() => layoutCompressorMap({ ...figures, lines }, size)).toThrow('lines[0].spots[0].flowKgPerS');
    expect(() => layoutCompressorMap(figures, { width: 100, height: 300 })).toThrow(NotDrawableError);
  });

  it('keeps every shape inside and every word clear of the others', () => {
    const spots = fc
      .array(
        fc.tuple(fc.double({ min: 0, max: 1, noNaN: true }), fc.double({ min: 1, max: 5, noNaN: true })),
        {
          minLength: 1,
          maxLength: 8,
        },
      )
      .map((all) => all.map(([flow, ratio]) => spot(flow, ratio)));
    const maps = fc.record({
      lines: fc.array(
        fc
          .record({
            shaftSpeedRpm: fc.integer({ min: 1, max: 300_000 }),
            spots,
            known: fc.boolean(),
            pct: fc.array(fc.double({ min: 20, max: 90, noNaN: true }), { minLength: 8, maxLength: 8 }),
          })
          .map(({ known, pct, ...line }) => ({
            ...line,
            efficienciesPct: known ? pct.slice(0, line.spots.length) : null,
          })),
        { maxLength: 9 },
      ),
      goals: fc.array(fc.record({ letter: fc.constantFrom('A', 'B'), name: fc.constant('x'), spots }), {
        maxLength: 6,
      }),
      pulls: fc.array(
        fc
          .record({ number: fc.integer({ min: 1, max: 99 }), spots, isOutside: fc.boolean() })
          .map((pull) => ({
            ...{ ...pull, name: 'x', standing: 'x' },
            peak: pull.spots[0] ?? spot(0, 1),
          })),
        { maxLength: 30 },
      ),
    });
    const sizes = fc.record({
      width: fc.integer({ min: 240, max: 1200 }),
      height: fc.integer({ min: 200, max: 700 }),
    });
    fc.assert(
      fc.property(maps, sizes, (map, one) => {
        const picture = layoutCompressorMap(map, one);
        expect(outOfBounds(picture)).toEqual([]);
        expect(overlaps(picture)).toEqual([]);
      }),
      { numRuns: 200, seed: 20261125 },
    );
  });
});
