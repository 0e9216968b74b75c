import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { NotDrawableError } from '../errors.js';
import { inBar, inKpa, outOfBounds, overlaps } from '../figures/test-picture.js';
import type { CircleShape, Shape, TextShape } from '../figures/shapes.js';
import type { ChartFigures, ChartSize } from './chart-figures.js';
import { layoutResponseChart } from './layout-response-chart.js';

const screen: ChartSize = { form: 'screen', width: 700, height: 340 };
const rising: ChartFigures = {
  dutyRange: { min: 0, max: 100 },
  baseKpa: 62,
  targetKpa: 138,
  toleranceKpa: 4,
  ceilingKpa: 150,
  pulls: [
    { number: 1, dutyPct: 12, peakKpa: 70.2, isVoid: false },
    { number: 2, dutyPct: 22, peakKpa: 61, isVoid: true },
    { number: 3, dutyPct: 42, peakKpa: 124.6, isVoid: false },
  ],
  curve: Array.from({ length: 11 }, (_, index) => ({
    duty: index * 10,
    medianKpa: 62 + index * 13,
    lowKpa: 60 + index * 11,
    highKpa: 64 + index * 17,
  })),
  next: { dutyPct: 46, lowKpa: 131, highKpa: 141 },
};
const nothing: ChartFigures = {
  ...rising,
  baseKpa: null,
  targetKpa: null,
  ceilingKpa: null,
  pulls: [],
  curve: [],
  next: null,
};

const textsOf = (shapes: readonly Shape[]): readonly string[] =>
  shapes.filter((shape): shape is TextShape => shape.kind === 'text').map((shape) => shape.text);
const circles = (shapes: readonly Shape[]): readonly CircleShape[] =>
  shapes.filter((shape): shape is CircleShape => shape.kind === 'circle');

const chartsOf = (kpa: fc.Arbitrary<number>): fc.Arbitrary<ChartFigures> =>
  fc.record({
    dutyRange: fc.constantFrom({ min: 0, max: 100 }, { min: 5, max: 5 }, { min: 10, max: 85 }),
    baseKpa: fc.option(kpa),
    targetKpa: fc.option(kpa),
    toleranceKpa: kpa.map((value) => Math.abs(value) / 10),
    ceilingKpa: fc.option(kpa),
    pulls: fc
      .array(fc.record({ dutyPct: fc.integer({ min: 0, max: 100 }), peakKpa: kpa, isVoid: fc.boolean() }), {
        maxLength: 25,
      })
      .map((pulls) => pulls.map((pull, index) => ({ ...pull, number: index + 1 }))),
    curve: fc.array(fc.tuple(kpa, kpa, kpa), { maxLength: 12 }).map((points) =>
      points.map((point, index) => {
        const [lowKpa, medianKpa, highKpa] = [...point].sort((a, b) => a - b);
        return { duty: index * 8, lowKpa: lowKpa ?? 0, medianKpa: medianKpa ?? 0, highKpa: highKpa ?? 0 };
      }),
    ),
    next: fc.option(
      fc
        .tuple(fc.integer({ min: 0, max: 100 }), kpa, kpa)
        .map(([dutyPct, a, b]) => ({ dutyPct, lowKpa: Math.min(a, b), highKpa: Math.max(a, b) })),
    ),
  });
const sizes: fc.Arbitrary<ChartSize> = fc.record({
  form: fc.constantFrom('screen', 'paper'),
  width: fc.integer({ min: 240, max: 1200 }),
  height: fc.integer({ min: 180, max: 800 }),
});

describe('layoutResponseChart(figures, size, format)', () => {
  it('puts more duty further right and more boost further up', () => {
    const [first, third, voided] = circles(layoutResponseChart(rising, screen, inKpa).shapes);
    if (!first || !third || !voided) throw new Error('three marks wanted');
    expect([first.role, third.role, voided.role].sort()).toEqual(['pull', 'pull', 'void']);
    const byNumber = circles(layoutResponseChart({ ...rising, curve: [] }, screen, inKpa).shapes);
    const xs = byNumber.map((circle) => circle.cx);
    expect(xs).toEqual([...xs].sort((a, b) => a - b));
    expect(byNumber[2]?.cy).toBeLessThan(byNumber[0]?.cy ?? 0);
    expect(byNumber[1]?.cy).toBeGreaterThan(byNumber[0]?.cy ?? 0);
  });

  it('runs the median of a straight response as a straight line through the pulls on it', () => {
    const on = { number: 9, dutyPct: 20, peakKpa: 88, isVoid: false };
    const { shapes } = layoutResponseChart({ ...rising, pulls: [on] }, screen, inKpa);
    const line = shapes.find((shape) => shape.role === 'curve');
    if (line?.kind !== 'path') throw new Error('no curve');
    const points = [...line.d.matchAll(/[ML]([\d.]+) ([\d.]+)/g)].map(([, x, y]) => [Number(x), Number(y)]);
    const mark = circles(shapes)[0];
    const point = points[2];
    expect(point?.[0]).toBeCloseTo(mark?.cx ?? -1, 1);
    expect(point?.[1]).toBeCloseTo(mark?.cy ?? -1, 1);
  });

  it('cuts the prediction at the top of the plot instead of flattening everything below it', () => {
    const wild = rising.curve.map((point) => ({ ...point, highKpa: point.highKpa + point.duty * 50 }));
    const tame = layoutResponseChart(rising, screen, inKpa);
    const cut = layoutResponseChart({ ...rising, curve: wild }, screen, inKpa);
    expect(circles(cut.shapes)).toEqual(circles(tame.shapes));
    expect(outOfBounds(cut)).toEqual([]);
  });

  it('writes ticks that are round in the unit of the person', () => {
    expect(textsOf(layoutResponseChart(rising, screen, inBar).shapes)).toEqual(
      expect.arrayContaining(['0', '0.5', '1.0', '1.5', 'ceiling 1.50', 'target 1.38', 'peak bar', 'duty %']),
    );
  });

  it('says what is not agreed yet and draws axes without any figures', () => {
    const texts = textsOf(layoutResponseChart(nothing, screen, inKpa).shapes);
    expect(texts).toEqual(expect.arrayContaining(['no ceiling yet', 'no target yet', 'duty %']));
  });

  it('lets repeats of one duty step aside with a leader and gathers what finds no room', () => {
    const repeats = (count: number): readonly Shape[] => {
      const pulls = Array.from({ length: count }, (_, index) => ({
        number: index + 1,
        dutyPct: 46,
        peakKpa: 138,
        isVoid: false,
      }));
      return layoutResponseChart({ ...rising, pulls }, screen, inKpa).shapes;
    };
    expect(circles(repeats(5))).toHaveLength(5);
    expect(repeats(5).filter((shape) => shape.role === 'leader')).toHaveLength(4);
    expect(textsOf(repeats(9)).some((text) => text.startsWith('×'))).toBe(true);
  });

  it('leads no mark under that of another duty on a phone: it gathers the repeats instead', () => {
    const pulls = [50, 52, 52, 52].map((dutyPct, index) => ({
      number: index + 1,
      dutyPct,
      peakKpa: 138,
      isVoid: false,
    }));
    const phone: ChartSize = { form: 'screen', width: 300, height: 260 };
    const { shapes } = layoutResponseChart({ ...rising, pulls }, phone, inKpa);
    const first = circles(shapes).find(({ role }) => role === 'pull');
    const leaders = shapes.filter((shape) => shape.kind === 'line' && shape.role === 'leader');
    for (const leader of leaders) {
      if (leader.kind !== 'line') continue;
      const [from, to] = [Math.min(leader.x1, leader.x2), Math.max(leader.x1, leader.x2)];
      expect((first?.cx ?? 0) > from && (first?.cx ?? 0) < to).toBe(false);
    }
    expect(textsOf(shapes).filter((text) => /^([1-4]|×\d)$/.test(text)).length).toBeLessThan(5);
    expect(textsOf(shapes)).toContain('150');
  });

  it.each([
    ['dutyRange.max', { ...rising, dutyRange: { min: 5, max: 4 } }],
    [
      'pulls[0].dutyPct',
      { ...rising, pulls: [{ number: 1, dutyPct: Number.NaN, peakKpa: 1, isVoid: false }] },
    ],
    ['curve[1].duty', { ...rising, curve: [...rising.curve].reverse() }],
    ['next.highKpa', { ...rising, next: { dutyPct: 1, lowKpa: 2, highKpa: 1 } }],
  ])('throws NotDrawableError naming %s', (argument, figures) => {
    expect(() => layoutResponseChart(figures, screen, inKpa)).toThrow(NotDrawableError);
    expect(() => layoutResponseChart(figures, screen, inKpa)).toThrow(argument);
  });

  it.each([
    ['boost as met in a workshop', chartsOf(fc.double({ min: -50, max: 400, noNaN: true }))],
    ['any finite figures', chartsOf(fc.double({ noNaN: true, noDefaultInfinity: true }))],
  ])('keeps every shape inside and every word clear of the others for %s', (_, figures) => {
    fc.assert(
      fc.property(figures, sizes, (chart, size) => {
        const picture = layoutResponseChart(chart, size, inKpa);
        expect(outOfBounds(picture)).toEqual([]);
        expect(overlaps(picture)).toEqual([]);
      }),
      { numRuns: 200, seed: 20261125 },
    );
  });
});
