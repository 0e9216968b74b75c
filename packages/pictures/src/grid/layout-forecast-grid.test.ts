import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { NotDrawableError } from '../errors.js';
import { inBar, inKpa, outOfBounds, overlaps } from '../figures/test-picture.js';
import type { Picture, TextShape } from '../figures/shapes.js';
import { layoutForecastGrid, sayChance, type GridCell, type GridFigures } from './index.js';

const cell = (more: Partial<GridCell> = {}): GridCell => ({
  status: 'known',
  medianKpa: 140,
  lowKpa: 136,
  highKpa: 144,
  probabilityOverCeiling: 0.001,
  ...more,
});
const grid: GridFigures = {
  rowsName: 'Intake air °C',
  columnsName: 'Gear',
  columns: ['3', '4', '5'],
  rows: [
    { label: '−10', cells: [cell({ status: 'unknown', lowKpa: 110, highKpa: 172 }), cell(), cell()] },
    {
      label: '20',
      cells: [cell(), cell({ status: 'beyond' }), cell({ highKpa: 158, probabilityOverCeiling: 0.12 })],
    },
  ],
  ceilingKpa: 155,
  riskLimit: 0.02,
};
const textsOf = ({ shapes }: Picture): string[] =>
  shapes.filter((shape): shape is TextShape => shape.kind === 'text').map(({ text }) => text);
const rolesOf = ({ shapes }: Picture): string[] => shapes.map(({ role }) => role);

describe('layoutForecastGrid', () => {
  it('says the chance in each cell that the pulls tell of, and unknown in the others', () => {
    const picture = layoutForecastGrid(grid, { width: 600 }, inKpa);
    expect(textsOf(picture).filter((text) => text === '<1 %')).toHaveLength(4);
    expect(textsOf(picture)).toEqual(expect.arrayContaining(['▲ 12 %', 'unknown', 'Gear', 'Intake air °C']));
    expect(rolesOf(picture).filter((role) => role === 'cell-over')).toHaveLength(1);
    expect(rolesOf(picture).filter((role) => role === 'cell-beyond')).toHaveLength(1);
    expect(rolesOf(picture).filter((role) => role === 'hatch')).toHaveLength(1);
    expect(rolesOf(picture).filter((role) => role === 'range-over')).toHaveLength(1);
  });

  it('shortens unknown to a question mark where there is no room', () => {
    const unknown = Array.from({ length: 5 }, () => cell({ status: 'unknown' }));
    const wide = { ...grid, columns: ['1', '2', '3', '4', '5'], rows: [{ label: '0', cells: unknown }] };
    expect(textsOf(layoutForecastGrid(wide, { width: 240 }, inKpa))).toContain('?');
  });

  it('tells the same in words and as a table, in the person’s unit', () => {
    const { description, table } = layoutForecastGrid(grid, { width: 600 }, inBar);
    expect(description).toBe(
      "Forecast of a pull's peak in bar over Intake air °C and Gear, ceiling 1.55; 5 of 6 cells told by the pulls, 1 unknown; 1 with a chance above 2 % of passing the ceiling; highest at 20 and 5: 12 %, peak 1.36 to 1.58.",
    );
    expect(table.header).toEqual(['Intake air °C \\ Gear', '3', '4', '5']);
    expect(table.rows[0]?.[1]).toBe('unknown; allowing for it 1.10 to 1.72');
    expect(table.rows[1]).toEqual([
      '20',
      '1.40 (1.36 to 1.44), <1 %',
      '1.40 (1.36 to 1.44), <1 %, beyond these pulls',
      '1.40 (1.36 to 1.58), 12 %',
    ]);
  });

  it('keeps every shape inside and every word clear of the others, at any width', () => {
    const anyCell = fc
      .tuple(
        fc.constantFrom<GridCell['status']>('known', 'beyond', 'unknown'),
        fc.double({ min: -1e5, max: 1e5, noNaN: true }),
        fc.double({ min: 0, max: 1e5, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
      )
      .map(([status, lowKpa, width, probabilityOverCeiling]): GridCell => {
        return {
          status,
          lowKpa,
          medianKpa: lowKpa + width / 2,
          highKpa: lowKpa + width,
          probabilityOverCeiling,
        };
      });
    const anyGrid = fc.integer({ min: 1, max: 6 }).chain((columns) =>
      fc.record({
        rowsName: fc.constant('Intake air °C'),
        columnsName: fc.constantFrom('Gear', 'Height above the sea, m'),
        columns: fc.constant(Array.from({ length: columns }, (_, index) => `${index * 500}`)),
        rows: fc.array(
          fc.record({
            label: fc.constantFrom('−10', '100'),
            cells: fc.array(anyCell, { minLength: columns, maxLength: columns }),
          }),
          { minLength: 1, maxLength: 6 },
        ),
        ceilingKpa: fc.double({ min: 1, max: 1e5, noNaN: true }),
        riskLimit: fc.constant(0.02),
      }),
    );
    fc.assert(
      fc.property(anyGrid, fc.integer({ min: 240, max: 1200 }), (figures, width) => {
        const picture = layoutForecastGrid(figures, { width }, inKpa);
        expect(outOfBounds(picture)).toEqual([]);
        expect(overlaps(picture)).toEqual([]);
      }),
      { numRuns: 150, seed: 20261125 },
    );
  });

  it('refuses a ragged grid, an empty one, a figure that is not finite and too small a width', () => {
    const ragged = { ...grid, rows: [{ label: '0', cells: [cell()] }] };
    expect(() => layoutForecastGrid(ragged, { width: 600 }, inKpa)).toThrow('rows[0].cells.length');
    expect(() => layoutForecastGrid({ ...grid, rows: [] }, { width: 600 }, inKpa)).toThrow(NotDrawableError);
    expect(() => layoutForecastGrid({ ...grid, ceilingKpa: NaN }, { width: 600 }, inKpa)).toThrow(
      'ceilingKpa',
    );
    expect(() => layoutForecastGrid(grid, { width: 239 }, inKpa)).toThrow('width');
  });
});

describe('sayChance', () => {
  it.each([
    [0, '<1 %'],
    [0.004, '<1 %'],
    [0.0094, '<1 %'],
    [0.0096, '1 %'],
    [0.02, '2 %'],
    [0.024, '2.4 %'],
    [0.0996, '10 %'],
    [0.124, '12 %'],
    [0.994, '99 %'],
    [0.999, '>99 %'],
  ])('of %f is %s', (probability, said) => {
    expect(sayChance(probability)).toBe(said);
  });
});
