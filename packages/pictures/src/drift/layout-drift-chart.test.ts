import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { NotDrawableError } from '../errors.js';
import { inBar, inKpa, outOfBounds, overlaps } from '../figures/test-picture.js';
import type { Picture, TextShape } from '../figures/shapes.js';
import { layoutDriftChart, type DriftFigures, type DriftSince } from './index.js';

const since = (more: Partial<DriftSince> = {}): DriftSince => ({
  ...{ visitNumber: 7, number: 1, kpa: 140.5, lowKpa: 132, highKpa: 148, isOut: false },
  ...{ averageKpa: 140.2, averageLowKpa: 136, averageHighKpa: 144, isAverageOut: false },
  ...more,
});
const figures: DriftFigures = {
  baseline: [139.5, 140.4, 140.1].map((kpa, index) => ({ visitNumber: 3, number: index + 5, kpa })),
  since: [
    since(),
    since({ visitNumber: 9, kpa: 131, isOut: true, averageKpa: 135, isAverageOut: true }),
    since({ visitNumber: 9, number: 2, kpa: 134 }),
  ],
  centreKpa: 140,
  targetKpa: 140,
  toleranceKpa: 4,
  ceilingKpa: 155,
  firedAt: 1,
};
const size = { width: 700, height: 280 };
const textsOf = ({ shapes }: Picture): string[] =>
  shapes.filter((shape): shape is TextShape => shape.kind === 'text').map(({ text }) => text);
const countOf = ({ shapes }: Picture, role: string): number =>
  shapes.filter((shape) => shape.role === role).length;

describe('layoutDriftChart', () => {
  it('marks baseline, later and outlying pulls by shape, visit by visit, with a flag where a rule fired', () => {
    const picture = layoutDriftChart(figures, size, inKpa);
    expect(countOf(picture, 'past')).toBe(3);
    expect(countOf(picture, 'pull')).toBe(2);
    // The pull, and the average below it.
    expect(countOf(picture, 'over')).toBe(2);
    expect(textsOf(picture)).toEqual(
      expect.arrayContaining(['visit 3', 'visit 7', 'visit 9', '▲ alarm', 'ceiling 155', 'was 140']),
    );
    expect(countOf(picture, 'limit')).toBe(2);
    expect(countOf(picture, 'limit-average')).toBe(2);
  });

  it('draws the baseline alone before any later pull, and says so', () => {
    const picture = layoutDriftChart({ ...figures, since: [], firedAt: null }, size, inKpa);
    expect(countOf(picture, 'limit')).toBe(0);
    expect(picture.description).toBe(
      'Peaks in kPa at reference conditions over visits: 3 of the baseline, mean 140; 0 since; no alarm.',
    );
  });

  it('tells the same in words and as a table, in the person’s unit', () => {
    const { description, table } = layoutDriftChart(figures, size, inBar);
    expect(description).toContain('newest 1.34, limits of a single pull 1.32 to 1.48');
    expect(description).toContain('alarm at pull 1 of visit 9');
    expect(table.rows[4]).toEqual([
      ...['9', '1', '1.31', '1.32 to 1.48', '1.35', '1.36 to 1.44', 'pull and average outside'],
    ]);
    expect(table.rows.every((row) => row.length === table.header.length)).toBe(true);
  });

  it('keeps every shape inside and its words clear of each other, whatever the figures', () => {
    const kpa = fc.double({ min: 1, max: 400, noNaN: true });
    const pull = fc
      .tuple(fc.integer({ min: 1, max: 4 }), kpa, kpa, kpa, fc.boolean())
      .map(([visitNumber, a, b, c, isOut]): DriftSince => {
        const [low, middle, high] = [a, b, c].sort((x, y) => x - y) as [number, number, number];
        return since({
          ...{ visitNumber, kpa: b, lowKpa: low, highKpa: high, isOut },
          ...{ averageKpa: middle, averageLowKpa: low, averageHighKpa: high },
        });
      });
    const any = fc.record({
      baseline: fc.constant(figures.baseline),
      since: fc.array(pull, { maxLength: 30 }),
      centreKpa: kpa,
      targetKpa: fc.option(kpa),
      toleranceKpa: fc.double({ min: 0, max: 30, noNaN: true }),
      ceilingKpa: fc.option(kpa),
      firedAt: fc.constant(null),
    });
    fc.assert(
      fc.property(any, fc.integer({ min: 240, max: 1200 }), (drift, width) => {
        const picture = layoutDriftChart(drift, { width, height: 280 }, inKpa);
        expect(
          outOfBounds({ ...picture, shapes: picture.shapes.filter(({ kind }) => kind === 'text') }),
        ).toEqual([]);
        const outer = picture.shapes.filter(
          ({ role }) => !['past-text', 'pull-text', 'over-text'].includes(role),
        );
        expect(overlaps({ ...picture, shapes: outer })).toEqual([]);
      }),
      { numRuns: 150, seed: 20261125 },
    );
  });

  it('refuses no baseline, limits upside down, a figure that is not finite, too small a size', () => {
    const draw = (more: Partial<DriftFigures>) => () =>
      layoutDriftChart({ ...figures, ...more }, size, inKpa);
    expect(draw({ baseline: [] })).toThrow(NotDrawableError);
    expect(draw({ since: [since({ highKpa: 100 })] })).toThrow('since[0].highKpa');
    expect(draw({ centreKpa: Infinity })).toThrow('centreKpa');
    expect(() => layoutDriftChart(figures, { width: 239, height: 280 }, inKpa)).toThrow('width');
    expect(() => layoutDriftChart(figures, { width: 500, height: 179 }, inKpa)).toThrow('height');
  });
});
