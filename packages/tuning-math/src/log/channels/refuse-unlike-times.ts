import { LogError } from '../log-error.js';
import type { TableLayout } from '../reading/detect-layout.js';
import { parseCell } from '../reading/parse-cell.js';
import type { ColumnClaim } from './recognise-columns.js';
import { headerWords } from './header-words.js';
import { QUANTITY_WORDS } from './quantity-words.js';

/** Sizes of one time unit in another that two columns of the same rows may differ by: s, ms, µs, minutes, hours, days. */
const UNIT_RATIOS = [1, 1e3, 1e6, 60, 6e4, 3600, 3.6e6, 86_400, 8.64e7];
const RATIO_TOLERANCE = 0.05;
const LEAST_ROWS = 5;

/**
 * Refuses a log whose channels go by clocks of their own: several time columns that do not advance
 * together. With one common time such a log would be read wrongly, without anything to show for it.
 *
 * @param layout of the table
 * @param claims what the columns hold; the first time column is among them
 * @throws LogError `several-times`
 * Source: common practice, no source.
 */
export function refuseUnlikeTimes(layout: TableLayout, claims: readonly ColumnClaim[]): void {
  const chosen = claims.find(({ quantity }) => quantity === 'time');
  if (chosen === undefined || chosen.byRecipe) return;
  const span = spanOf(layout, chosen.column);
  for (const claim of claims) {
    if (claim === chosen || claim.quantity !== 'unknown' || !isNamedTime(claim.header)) continue;
    const other = spanOf(layout, claim.column);
    if (span === null || other === null || advanceTogether(span, other)) continue;
    throw new LogError(
      'several-times',
      `the columns "${chosen.header}" and "${claim.header}" are times that do not advance together: channels seem to have clocks of their own`,
      'export the log with one common time for all channels, or say in the channel recipe which time is theirs',
    );
  }
}

function isNamedTime(header: string): boolean {
  const { name } = headerWords(header);
  const rule = QUANTITY_WORDS.find(({ words, not }) => words.test(name) && !not?.test(name));
  return rule?.quantity === 'time';
}

/** How far a column advances over the sample rows; null where it holds no times there. */
function spanOf(layout: TableLayout, column: number): number | null {
  const times = layout.sampleRows
    .map((cells) => parseCell(cells[column] ?? '', layout.decimalMarks[column] ?? '.').value)
    .filter((value) => Number.isFinite(value));
  const span = (times.at(-1) ?? 0) - (times[0] ?? 0);
  return times.length < LEAST_ROWS || !(span > 0) ? null : span;
}

function advanceTogether(a: number, b: number): boolean {
  const ratio = Math.max(a, b) / Math.min(a, b);
  return UNIT_RATIOS.some((unit) => Math.abs(ratio / unit - 1) <= RATIO_TOLERANCE);
}
