import { NotDrawableError } from '../errors.js';
import type { PressureFormat } from '../figures/pressure-format.js';
import { requireFigure } from '../figures/require-figure.js';
import type { Picture, Shape } from '../figures/shapes.js';
import { textWidth } from '../figures/text-width.js';
import { describeGrid, gridTable } from './describe-grid.js';
import { gridCells } from './grid-cells.js';
import type { GridFigures } from './grid-figures.js';
import { gridGround, TEXT_SIZE, type GridGround } from './grid-ground.js';

const LEAST_WIDTH = 240;

/**
 * A grid of forecasts: in each cell the chance of passing the ceiling, and below it the range of a pull against the
 * ceiling's wall. Cells above the risk limit have a thick frame and a triangle, those beyond the pulls a dashed one,
 * unknown ones are hatched and say so: it reads without colour.
 *
 * @param figures pressures in kPa gauge; at least one row and column, each row as long as `columns`
 * @param size width in px, at least 240; the height follows
 * @param format the person's unit
 * @returns shapes back to front, text alternative and table
 * @throws NotDrawableError for a figure that is not finite, a ragged grid, too small a width
 */
export function layoutForecastGrid(
  figures: GridFigures,
  size: { readonly width: number },
  format: PressureFormat,
): Picture {
  requireFigure('width', size.width, LEAST_WIDTH);
  checkGrid(figures);
  const ground = gridGround(figures, size.width);
  return {
    width: size.width,
    height: ground.height,
    shapes: [...names(figures, ground), ...heads(figures, ground), ...gridCells(figures, ground)],
    description: describeGrid(figures, format),
    table: gridTable(figures, format),
  };
}

const plain = { kind: 'text', size: TEXT_SIZE, weight: 'normal', turn: 0 } as const;

/** What the columns stand for, above them; what the rows stand for comes first. */
function names({ rowsName, columnsName }: GridFigures, { left, width }: GridGround): Shape[] {
  const y = TEXT_SIZE;
  const room = width - textWidth(columnsName, TEXT_SIZE) - 8;
  const shapes: Shape[] = [{ ...plain, role: 'axis-text', x: width, y, text: columnsName, anchor: 'end' }];
  if (textWidth(rowsName, TEXT_SIZE) > Math.max(room, left)) return shapes;
  return [...shapes, { ...plain, role: 'axis-text', x: 0, y, text: rowsName, anchor: 'start' }];
}

/** Heads stand over their columns as far as they find room. */
function heads({ columns, rows }: GridFigures, ground: GridGround): Shape[] {
  const { left, top, cellWidth, cellHeight } = ground;
  const ofColumns = columns.flatMap((text, index): Shape[] => {
    if (textWidth(text, TEXT_SIZE) > cellWidth) return [];
    const x = left + (index + 0.5) * cellWidth;
    return [{ ...plain, role: 'tick-text', x, y: top - 8, text, anchor: 'middle' }];
  });
  const ofRows = rows.map(({ label }, index): Shape => {
    const y = top + (index + 0.5) * cellHeight + TEXT_SIZE * 0.35;
    return { ...plain, role: 'tick-text', x: left - 6, y, text: label, anchor: 'end' };
  });
  return [...ofColumns, ...ofRows];
}

function checkGrid({ columns, rows, ceilingKpa, riskLimit }: GridFigures): void {
  requireFigure('ceilingKpa', ceilingKpa);
  requireFigure('riskLimit', riskLimit, 0);
  if (columns.length === 0) throw new NotDrawableError('columns.length', 0, 'at least 1');
  if (rows.length === 0) throw new NotDrawableError('rows.length', 0, 'at least 1');
  rows.forEach(({ cells }, row) => {
    const name = `rows[${row}].cells`;
    if (cells.length !== columns.length) {
      throw new NotDrawableError(`${name}.length`, cells.length, `as many as columns, ${columns.length}`);
    }
    cells.forEach((cell, column) => {
      requireFigure(`${name}[${column}].medianKpa`, cell.medianKpa);
      requireFigure(`${name}[${column}].lowKpa`, cell.lowKpa);
      requireFigure(`${name}[${column}].highKpa`, cell.highKpa, cell.lowKpa);
      requireFigure(`${name}[${column}].probabilityOverCeiling`, cell.probabilityOverCeiling, 0);
    });
  });
}
