import type { PressureFormat } from '../figures/pressure-format.js';
import type { PictureTable } from '../figures/shapes.js';
import type { GridCell, GridFigures } from './grid-figures.js';
import { sayChance } from './say-chance.js';

/** The grid in words, for those who do not see it. */
export function describeGrid(figures: GridFigures, format: PressureFormat): string {
  const { rowsName, columnsName, columns, rows, ceilingKpa, riskLimit } = figures;
  const cells = rows.flatMap(({ label, cells: ofRow }) =>
    ofRow.map((cell, index) => ({ cell, where: `${label} and ${columns[index] ?? ''}` })),
  );
  const told = cells.filter(({ cell }) => cell.status !== 'unknown');
  const unknown = cells.length - told.length;
  const risky = told.filter(({ cell }) => cell.probabilityOverCeiling > riskLimit).length;
  const worst = told.reduce<(typeof told)[number] | null>(
    (most, one) =>
      most === null || one.cell.probabilityOverCeiling > most.cell.probabilityOverCeiling ? one : most,
    null,
  );
  const parts = [
    `Forecast of a pull's peak in ${format.unit} over ${rowsName} and ${columnsName}, ceiling ${format.write(ceilingKpa)}`,
    `${told.length} of ${cells.length} cells told by the pulls, ${unknown} unknown`,
    `${risky} with a chance above ${sayChance(riskLimit)} of passing the ceiling`,
    worst === null
      ? ''
      : `highest at ${worst.where}: ${sayChance(worst.cell.probabilityOverCeiling)}, peak ${range(worst.cell, format)}`,
  ];
  return `${parts.filter(Boolean).join('; ')}.`;
}

/** Each cell as median, range and chance, or as unknown. */
export function gridTable(figures: GridFigures, format: PressureFormat): PictureTable {
  return {
    header: [`${figures.rowsName} \\ ${figures.columnsName}`, ...figures.columns],
    rows: figures.rows.map(({ label, cells }) => [label, ...cells.map((cell) => sayCell(cell, format))]),
  };
}

function sayCell(cell: GridCell, format: PressureFormat): string {
  if (cell.status === 'unknown') return `unknown; allowing for it ${range(cell, format)}`;
  const beyond = cell.status === 'beyond' ? ', beyond these pulls' : '';
  const chance = sayChance(cell.probabilityOverCeiling);
  return `${format.write(cell.medianKpa)} (${range(cell, format)}), ${chance}${beyond}`;
}

function range({ lowKpa, highKpa }: GridCell, format: PressureFormat): string {
  return `${format.write(lowKpa)} to ${format.write(highKpa)}`;
}
