import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { NotDrawableError } from '../errors.js';
import { inBar, inKpa, overlaps, outOfBounds } from '../figures/test-picture.js';
import type { CircleShape, RectShape, Shape, TextShape } from '../figures/shapes.js';
import { layoutPeakStrip } from './layout-peak-strip.js';
import { peakStripHeight } from './peak-strip-height.js';
import type { StripFigures, StripSize } from './strip-figures.js';

const medium: StripSize = { form: 'medium', width: 700 };
const agreed: StripFigures = {
  baseKpa: 62,
  targetKpa: 138,
  toleranceKpa: 4,
  ceilingKpa: 150,
  pulls: [
    { number: 1, peakKpa: 70.2, isVoid: false },
    { number: 2, peakKpa: 61, isVoid: true },
    { number: 3, peakKpa: 97.9, isVoid: false },
    { number: 4, peakKpa: 124.6, isVoid: false },
  ],
  next: { lowKpa: 131, highKpa: 141 },
};
const nothing: StripFigures = {
  baseKpa: null,
  targetKpa: null,
  toleranceKpa: 4,
  ceilingKpa: null,
  pulls: [],
  next: null,
};

const ofRole = (shapes: readonly Shape[], role: Shape['role']): readonly Shape[] =>
  shapes.filter((shape) => shape.role === role);
const textsOf = (shapes: readonly Shape[]): readonly string[] =>
  shapes.filter((shape): shape is TextShape => shape.kind === 'text').map((shape) => shape.text);
const circleAt = (shapes: readonly Shape[], role: Shape['role'], index: number): CircleShape => {
  const shape = ofRole(shapes, role)[index];
  if (shape?.kind !== 'circle') throw new Error(`no circle ${role} ${index}`);
  return shape;
};
const rectOf = (shapes: readonly Shape[], role: Shape['role']): RectShape => {
  const shape = ofRole(shapes, role)[0];
  if (shape?.kind !== 'rect') throw new Error(`no rect ${role}`);
  return shape;
};

const realistic = fc.double({ min: -50, max: 400, noNaN: true });
const anyFinite = fc.double({ noNaN: true, noDefaultInfinity: true });
const figuresOf = (kpa: fc.Arbitrary<number>): fc.Arbitrary<StripFigures> =>
  fc.record({
    baseKpa: fc.option(kpa),
    targetKpa: fc.option(kpa),
    toleranceKpa: kpa.map((value) => Math.abs(value) / 10),
    ceilingKpa: fc.option(kpa),
    pulls: fc
      .array(fc.record({ peakKpa: kpa, isVoid: fc.boolean() }), { maxLength: 40 })
      .map((pulls) => pulls.map((pull, index) => ({ ...pull, number: index + 1 }))),
    next: fc.option(
      fc.tuple(kpa, kpa).map(([a, b]) => ({ lowKpa: Math.min(a, b), highKpa: Math.max(a, b) })),
    ),
  });
const sizes: fc.Arbitrary<StripSize> = fc.record({
  form: fc.constantFrom('small', 'medium', 'paper'),
  width: fc.integer({ min: 120, max: 1400 }),
});

describe('layoutPeakStrip(figures, size, format)', () => {
  it('threads usable pulls filled and void pulls hollow, left to right by peak', () => {
    const { shapes } = layoutPeakStrip(agreed, medium, inKpa);
    const xs = [0, 1, 2].map((index) => circleAt(shapes, 'pull', index).cx);
    expect(xs).toEqual([...xs].sort((a, b) => a - b));
    expect(circleAt(shapes, 'void', 0).cx).toBeLessThan(xs[0] ?? 0);
  });

  it('draws the band from target minus to target plus tolerance on the scale of the marks', () => {
    const at = (kpa: number): number => {
      const pulls = [{ number: 1, peakKpa: kpa, isVoid: false }];
      return circleAt(layoutPeakStrip({ ...agreed, pulls, next: null }, medium, inKpa).shapes, 'pull', 0).cx;
    };
    const band = rectOf(layoutPeakStrip({ ...agreed, pulls: [], next: null }, medium, inKpa).shapes, 'band');
    expect(band.x).toBeCloseTo(at(134), 6);
    expect(band.x + band.width).toBeCloseTo(at(142), 6);
  });

  it('draws a pull past the ceiling square, and one at the ceiling round', () => {
    const pulls = [
      { number: 1, peakKpa: 150, isVoid: false },
      { number: 2, peakKpa: 190, isVoid: false },
    ];
    const { shapes, description } = layoutPeakStrip({ ...agreed, pulls }, medium, inKpa);
    expect(ofRole(shapes, 'pull')).toHaveLength(1);
    expect(rectOf(shapes, 'over').cornerRadius).toBeLessThan(2);
    expect(description).toContain('1 pull past the ceiling: 2 at 190');
  });

  it('writes goal and ceiling in the unit of the person', () => {
    expect(textsOf(layoutPeakStrip(agreed, medium, inBar).shapes)).toEqual(
      expect.arrayContaining(['target 1.38 ± 0.04', 'ceiling 1.50', 'base 0.62', 'next 1.31–1.41', 'bar']),
    );
  });

  it('says what is not agreed yet where target or ceiling is missing', () => {
    expect(textsOf(layoutPeakStrip(nothing, medium, inKpa).shapes)).toContain(
      'no target, no ceiling agreed yet',
    );
    const { shapes } = layoutPeakStrip({ ...agreed, ceilingKpa: null }, medium, inKpa);
    expect(textsOf(shapes)).toContain('no ceiling agreed yet');
    expect(ofRole(shapes, 'wall')).toEqual([]);
  });

  it('stacks pulls of one peak and gathers them with their numbers or count when the stack is full', () => {
    const repeated = (count: number): readonly string[] => {
      const pulls = Array.from({ length: count }, (_, index) => ({
        number: index + 1,
        peakKpa: 138,
        isVoid: false,
      }));
      const { shapes } = layoutPeakStrip({ ...agreed, pulls, next: null }, medium, inKpa);
      return shapes.filter((shape) => shape.role === 'pull-text').map((shape) => (shape as TextShape).text);
    };
    expect(repeated(3)).toEqual(['1', '2', '3']);
    expect(repeated(5)).toHaveLength(3);
    expect(repeated(40).join(' ')).toMatch(/–/);
  });

  it('keeps its height whatever the figures, so that a board does not jump', () => {
    const heights = [agreed, nothing].map((figures) => layoutPeakStrip(figures, medium, inKpa).height);
    expect(heights).toEqual([peakStripHeight('medium'), peakStripHeight('medium')]);
  });

  it('tells the whole strip in words and as a table', () => {
    const { description, table } = layoutPeakStrip(agreed, medium, inKpa);
    expect(description).toBe(
      'Boost in kPa: target 138 ± 4, ceiling 150, base 62; 3 pulls: 1 at 70, 3 at 98, 4 at 125; ' +
        '1 pull void: 2 at 61; next pull expected at 131 to 141.',
    );
    expect(table.rows).toHaveLength(4);
    expect(table.rows[1]).toEqual(['2', '61', 'void']);
  });

  it.each([
    ['targetKpa', { ...agreed, targetKpa: Number.NaN }],
    ['ceilingKpa', { ...agreed, ceilingKpa: Number.POSITIVE_INFINITY }],
    ['toleranceKpa', { ...agreed, toleranceKpa: -1 }],
    ['pulls[0].peakKpa', { ...agreed, pulls: [{ number: 1, peakKpa: Number.NaN, isVoid: false }] }],
    ['next.highKpa', { ...agreed, next: { lowKpa: 9, highKpa: 8 } }],
  ])('throws NotDrawableError naming %s', (argument, figures) => {
    expect(() => layoutPeakStrip(figures, medium, inKpa)).toThrow(NotDrawableError);
    expect(() => layoutPeakStrip(figures, medium, inKpa)).toThrow(argument);
  });

  it.each([
    ['boost as met in a workshop', figuresOf(realistic)],
    ['any finite figures', figuresOf(anyFinite)],
  ])('keeps every shape inside and every word clear of the others for %s', (_, figures) => {
    fc.assert(
      fc.property(figures, sizes, (strip, size) => {
        const picture = layoutPeakStrip(strip, size, inKpa);
        expect(outOfBounds(picture)).toEqual([]);
        expect(overlaps(picture)).toEqual([]);
      }),
      { numRuns: 300, seed: 20261125 },
    );
  });

  it('never lets a higher peak stand left of a lower one', () => {
    fc.assert(
      fc.property(figuresOf(realistic), realistic, realistic, (strip, a, b) => {
        const pulls = [a, b].map((peakKpa, index) => ({ number: index + 1, peakKpa, isVoid: index === 0 }));
        const { shapes } = layoutPeakStrip({ ...strip, ceilingKpa: null, pulls }, medium, inKpa);
        const [first, second] = [circleAt(shapes, 'void', 0).cx, circleAt(shapes, 'pull', 0).cx];
        expect(Math.sign(second - first) * Math.sign(b - a)).toBeGreaterThanOrEqual(0);
      }),
      { seed: 20261125 },
    );
  });

  it('does not change its arguments', () => {
    const frozen = Object.freeze({ ...agreed, pulls: Object.freeze(agreed.pulls.map(Object.freeze)) });
    expect(() => layoutPeakStrip(frozen as StripFigures, Object.freeze(medium), inKpa)).not.toThrow();
  });
});
