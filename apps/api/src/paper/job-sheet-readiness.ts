import type { PressureFormat } from '@pullbook/pictures';
import { drawFacts, drawHeading } from './drawing/blocks.js';
import { ink } from './drawing/inks.js';
import { makeRoom, type Paper } from './drawing/open-paper.js';
import { drawGroup, drawOrnament, drawTagged } from './drawing/tagged.js';
import { breakText, drawBlock, drawText, type TextBlock } from './drawing/text-block.js';
import type { JobSheet, JobSheetCheck } from './job-sheet.js';

const BOX = 11;
const GUTTER = 16;
const TEXT = { size: 9.5, weight: 'regular' } as const;

/** The readiness check with a box to tick for each line, and room for what is measured. @returns new y */
export function drawReadiness(paper: Paper, sheet: JobSheet, format: PressureFormat, y: number): number {
  const { doc, root, left, right } = paper;
  const width = (right - left - GUTTER) / 2;
  const blocks = sheet.readiness.map(({ question }) => breakText(doc, question, TEXT, width - BOX - 8));
  const half = Math.ceil(blocks.length / 2);
  const heights = Array.from({ length: half }, (_, row) =>
    Math.max(BOX, ...[blocks[row], blocks[row + half]].map((block) => block?.height ?? 0)),
  );
  const height = heights.reduce((sum, one) => sum + one + 6, 0);
  const heading = { tag: 'H2', text: 'Readiness check', follows: height + 36 } as const;
  const at = drawHeading(paper, root, heading, y);
  drawGroup(doc, root, 'L', (list) => {
    sheet.readiness.forEach((check, index) => {
      const row = index % half;
      const x = left + (index < half ? 0 : width + GUTTER);
      const above = heights.slice(0, row).reduce((sum, one) => sum + one + 6, 0);
      const block = blocks[index];
      if (block) drawCheck(paper, list, { check, block }, { x, y: at + 2 + above, width });
    });
  });
  return drawFacts(paper, root, measuredFacts(sheet, format), makeRoom(paper, at + height + 4, 30)) + 4;
}

function drawCheck(
  { doc }: Paper,
  list: PDFKit.PDFStructureElement,
  { check, block }: { readonly check: JobSheetCheck; readonly block: TextBlock },
  { x, y, width }: { readonly x: number; readonly y: number; readonly width: number },
): void {
  drawOrnament(doc, () => {
    doc
      .lineWidth(1)
      .rect(x, y + 0.5, BOX, BOX)
      .stroke(ink.text);
  });
  drawGroup(doc, list, 'LI', (item) => {
    if (check.ok) {
      drawTagged(doc, item, { tag: 'Lbl' }, () => {
        drawText(doc, '✓', { size: 10, weight: 'bold' }, { x, y, width: BOX, align: 'center' });
      });
    }
    drawTagged(doc, item, { tag: 'LBody' }, () => {
      drawBlock(doc, block, { x: x + BOX + 7, y, width: width - BOX - 7 });
    });
  });
}

function measuredFacts(sheet: JobSheet, format: PressureFormat): Parameters<typeof drawFacts>[2] {
  const cut = sheet.overBoostCutKpa;
  return [
    {
      label: `Over-boost cut, ${format.unit}`,
      value: cut === null ? '' : format.write(cut),
      share: 0.2,
    },
    { label: 'Idle vacuum', value: '', share: 0.2 },
    { label: 'Driver and passenger', value: '', share: 0.35 },
    { label: 'Checked by, at', value: '', share: 0.25 },
  ];
}
