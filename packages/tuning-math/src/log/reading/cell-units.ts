import type { TableLayout } from './detect-layout.js';
import { parseCell } from './parse-cell.js';

const ENOUGH_ROWS = 50;

/** Units that stand behind the numbers themselves (`12.4 psi`), by column; '' where none. */
export function cellUnits(layout: TableLayout): string[] {
  return layout.headers.map((_, column) => {
    for (const cells of layout.sampleRows.slice(0, ENOUGH_ROWS)) {
      const { unitText } = parseCell(cells[column] ?? '', layout.decimalMarks[column] ?? '.');
      if (unitText !== '') return unitText;
    }
    return '';
  });
}
