import { ink } from './inks.js';
import { makeRoom, type Paper } from './open-paper.js';
import { drawGroup, drawOrnament, drawTagged } from './tagged.js';
import { breakText, drawBlock, type TextBlock } from './text-block.js';

export interface PaperTable {
  readonly columns: readonly {
    readonly header: string;
    /** Share of the table's width; all together 1. */
    readonly share: number;
    readonly align?: 'left' | 'right';
  }[];
  readonly rows: readonly (readonly string[])[];
  /** Rows are at least this high; more for writing by hand. */
  readonly rowHeight: number;
  /** Upright rules between the columns, for writing by hand. */
  readonly isRuled: boolean;
}

const HEAD = { size: 8, weight: 'regular', colour: ink.soft } as const;
const CELL = { size: 9.5, weight: 'regular' } as const;
const PAD = 4;

interface Columns {
  readonly xs: readonly number[];
  readonly widths: readonly number[];
}

/** A table over the whole width, tagged with header cells; goes on with its header on the next page. @returns new y */
export function drawTable(
  paper: Paper,
  parent: PDFKit.PDFStructureElement,
  table: PaperTable,
  y: number,
): number {
  const columns = columnsOf(paper, table);
  let at = y;
  drawGroup(paper.doc, parent, 'Table', (group) => {
    at = drawRow(
      paper,
      group,
      { table, columns, cells: headBlocks(paper, table, columns), isHead: true },
      at,
    );
    for (const row of table.rows) {
      const cells = row.map((text, index) => block(paper, text, CELL, columns.widths[index] ?? 0));
      const height = rowHeight(cells, table.rowHeight);
      const start = makeRoom(paper, at, height);
      if (start < at) {
        const head = headBlocks(paper, table, columns);
        drawOrnament(paper.doc, () => drawCells(paper, { table, columns, cells: head }, start));
        at = start + rowHeight(head, 0);
      }
      at = drawRow(paper, group, { table, columns, cells, isHead: false }, at);
    }
  });
  return at;
}

interface Row {
  readonly table: PaperTable;
  readonly columns: Columns;
  readonly cells: readonly TextBlock[];
}

function drawRow(
  paper: Paper,
  group: PDFKit.PDFStructureElement,
  row: Row & { readonly isHead: boolean },
  y: number,
): number {
  const { table, columns, cells, isHead } = row;
  const height = rowHeight(cells, isHead ? 0 : table.rowHeight);
  drawGroup(paper.doc, group, 'TR', (tr) => {
    cells.forEach((cell, index) => {
      const options = isHead ? ({ tag: 'TH', scope: 'Column' } as const) : { tag: 'TD' };
      drawTagged(paper.doc, tr, options, () => drawCell(paper, row, { cell, index, y, height }));
    });
  });
  drawOrnament(paper.doc, () => {
    const bottom = y + height;
    const { doc, left, right } = paper;
    doc
      .lineWidth(isHead ? 0.9 : 0.5)
      .moveTo(left, bottom)
      .lineTo(right, bottom);
    doc.stroke(isHead ? ink.text : ink.rule);
    if (!table.isRuled || isHead) return;
    doc.lineWidth(0.4);
    for (const x of columns.xs.slice(1)) doc.moveTo(x, y).lineTo(x, bottom);
    doc.stroke(ink.faint);
  });
  return y + height;
}

function drawCells(paper: Paper, row: Row, y: number): void {
  const height = rowHeight(row.cells, 0);
  row.cells.forEach((cell, index) => drawCell(paper, row, { cell, index, y, height }));
  paper.doc
    .lineWidth(0.9)
    .moveTo(paper.left, y + height)
    .lineTo(paper.right, y + height)
    .stroke(ink.text);
}

function drawCell(
  { doc }: Paper,
  { table, columns }: Row,
  { cell, index, y, height }: { cell: TextBlock; index: number; y: number; height: number },
): void {
  const align = table.columns[index]?.align ?? 'left';
  const x = (columns.xs[index] ?? 0) + PAD;
  const width = (columns.widths[index] ?? 0) - 2 * PAD;
  drawBlock(doc, cell, { x, y: y + (height - cell.height) / 2, width, align });
}

function columnsOf({ left, right }: Paper, { columns }: PaperTable): Columns {
  const widths = columns.map(({ share }) => share * (right - left));
  const xs = widths.map((_, index) => left + widths.slice(0, index).reduce((sum, width) => sum + width, 0));
  return { xs, widths };
}

function headBlocks(paper: Paper, table: PaperTable, columns: Columns): readonly TextBlock[] {
  return table.columns.map(({ header }, index) => block(paper, header, HEAD, columns.widths[index] ?? 0));
}

function block({ doc }: Paper, text: string, style: typeof CELL | typeof HEAD, width: number): TextBlock {
  return breakText(doc, text, style, width - 2 * PAD);
}

function rowHeight(cells: readonly TextBlock[], least: number): number {
  return Math.max(least, ...cells.map((cell) => cell.height + 6));
}
