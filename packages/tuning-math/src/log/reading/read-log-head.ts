import { type ColumnClaim, recogniseColumns } from '../channels/recognise-columns.js';
import type { ChannelQuantity } from '../channel-quantities.js';
import type { ChannelRecipe } from '../channel-recipe.js';
import { LogError } from '../log-error.js';
import { byteText } from './byte-text.js';
import { cellUnits } from './cell-units.js';
import { detectLayout, type TableLayout } from './detect-layout.js';
import { HEAD_BYTES } from './head-bytes.js';
import { logShape, type LogShape } from './log-shape.js';
import { sampleCells } from './sample-cells.js';

/** A column by its head alone, before its samples are read. */
export interface HeadColumn {
  readonly header: string;
  readonly occurrence: number;
  readonly quantity: ChannelQuantity;
  /** As printed or told; null where only the values would tell. */
  readonly unit: string | null;
  readonly samples: readonly string[];
}

/** What the first lines of a log say. */
export interface LogHead {
  readonly shape: LogShape;
  readonly columns: readonly HeadColumn[];
  readonly delimiter: TableLayout['delimiter'];
  readonly decimalMark: '.' | ',';
}

/**
 * Columns of a log from its first bytes, so that a person can say what they hold before it is read.
 *
 * @param bytes the first of the file; what lies beyond 64 kB is not looked at
 * @param recipe how to read it, as far as known
 * @throws LogError for what is no table of numbers, or does not fit the recipe
 */
export function readLogHead(bytes: Uint8Array, recipe: ChannelRecipe | null = null): LogHead {
  const layout = layoutOfHead(bytes, recipe);
  const heads = { headers: layout.headers, unitTexts: layout.unitTexts, cellUnitTexts: cellUnits(layout) };
  const commas = layout.decimalMarks.filter((mark) => mark === ',').length;
  return {
    shape: logShape(layout),
    columns: recogniseColumns(heads, recipe).map((claim) => headColumn(layout, claim)),
    delimiter: layout.delimiter,
    decimalMark: commas * 2 > layout.decimalMarks.length ? ',' : '.',
  };
}

function headColumn(layout: TableLayout, claim: ColumnClaim): HeadColumn {
  return {
    header: claim.header,
    occurrence: claim.occurrence,
    quantity: quantityTold(claim),
    unit: claim.unit?.unit ?? null,
    samples: sampleCells(layout, claim.column),
  };
}

/** In a recipe the quantity alone says which kind of pressure a column is. */
function quantityTold({ quantity, reference }: ColumnClaim): ChannelQuantity {
  return quantity === 'boost-pressure' && reference === 'absolute' ? 'manifold-absolute-pressure' : quantity;
}

/** First lines of a log as text, for where no table can be made of them. @throws LogError `not-text` */
export function readLogLines(bytes: Uint8Array, mostLines: number): string[] {
  return textOfHead(bytes)
    .split(/\r\n|\n|\r/)
    .slice(0, mostLines);
}

/** Layout of the table that the first bytes show, under a recipe's delimiter and decimal mark. @throws LogError */
export function layoutOfHead(bytes: Uint8Array, recipe: ChannelRecipe | null): TableLayout {
  return detectLayout(textOfHead(bytes), {
    delimiter: recipe?.delimiter ?? null,
    decimalMark: recipe?.decimalMark ?? null,
  });
}

function textOfHead(bytes: Uint8Array): string {
  if (bytes.length === 0)
    throw new LogError('empty-file', 'the file is empty', 'choose the file with the log in it');
  const head = bytes.subarray(0, HEAD_BYTES);
  const text = byteText(head);
  return text.decodeHead(text.push(head).subarray(0, HEAD_BYTES));
}
