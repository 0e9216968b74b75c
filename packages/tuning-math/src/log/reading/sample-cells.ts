import type { TableLayout } from './detect-layout.js';

const ENOUGH = 3;
const LONGEST = 40;

/** Some filled cells of a column as they stand in the file, spread over its first rows. */
export function sampleCells(layout: TableLayout, column: number): string[] {
  const filled = layout.sampleRows.flatMap((cells) => (cells[column] ? [cells[column]] : []));
  const last = filled.length - 1;
  const chosen = Array.from({ length: ENOUGH }, (_, at) => Math.round((at * last) / (ENOUGH - 1)));
  return [...new Set(chosen)].flatMap((at) => filled[at]?.slice(0, LONGEST) ?? []);
}
