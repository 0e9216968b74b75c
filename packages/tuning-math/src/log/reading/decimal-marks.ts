const COMMA_CELL = /^[+-]?\d*,\d+(e[+-]?\d+)?\s*\D{0,8}$/i;
const POINT_CELL = /^[+-]?\d*\.\d+(e[+-]?\d+)?\s*\D{0,8}$/i;
const THREE_AFTER = /[.,]\d{3}\s*\D{0,8}$/;
const POINT_LAST = /\d,\d{3}(,\d{3})*\.\d/;
const COMMA_LAST = /\d\.\d{3}(\.\d{3})*,\d/;

/**
 * Decimal mark of one column from some of its cells. A cell with both marks shows it by which comes last;
 * a mark that is not followed by exactly three digits is decimal; three digits after each comma are
 * thousands only where the file's other columns use the point.
 *
 * @param cells cells of the column
 * @returns null where the column does not tell
 * Source: common practice, no source.
 */
export function decimalMarkOf(cells: readonly string[]): '.' | ',' | null {
  const votes = cells.reduce((sum, cell) => sum + vote(cell), 0);
  if (votes === 0) return null;
  return votes > 0 ? ',' : '.';
}

/** Above 0 for the comma, below for the point. */
function vote(cell: string): number {
  if (!cell.includes(',') && !cell.includes('.')) return 0;
  if (COMMA_LAST.test(cell)) return 4;
  if (POINT_LAST.test(cell)) return -4;
  if (THREE_AFTER.test(cell)) return 0;
  if (COMMA_CELL.test(cell)) return 1;
  return POINT_CELL.test(cell) ? -1 : 0;
}

/**
 * Decimal marks of all columns: each column's own, the file's majority where a column does not tell, and
 * the mark that does occur where no column tells.
 */
export function decimalMarksOf(columns: readonly (readonly string[])[]): ('.' | ',')[] {
  const own = columns.map(decimalMarkOf);
  const commas = own.filter((mark) => mark === ',').length;
  const points = own.filter((mark) => mark === '.').length;
  const silent = commas + points === 0 ? markThatOccurs(columns) : commas > points ? ',' : '.';
  return own.map((mark) => mark ?? silent);
}

function markThatOccurs(columns: readonly (readonly string[])[]): '.' | ',' {
  const cells = columns.flat();
  const hasPoint = cells.some((cell) => POINT_CELL.test(cell));
  return !hasPoint && cells.some((cell) => COMMA_CELL.test(cell)) ? ',' : '.';
}
