import { drawHeading } from './drawing/blocks.js';
import { ink } from './drawing/inks.js';
import type { Paper } from './drawing/open-paper.js';
import { drawOrnament } from './drawing/tagged.js';

const LINE = 20;
const LEAST_LINES = 4;
const MOST_LINES = 14;

/** Lines to write on. @returns new y */
export function drawRuledLines(paper: Paper, y: number, count: number): number {
  const { doc, left, right } = paper;
  drawOrnament(doc, () => {
    doc.lineWidth(0.6);
    for (let index = 1; index <= count; index += 1)
      doc.moveTo(left, y + index * LINE).lineTo(right, y + index * LINE);
    doc.stroke(ink.rule);
  });
  return y + count * LINE + 8;
}

/** Room for notes: what is left of the page, within reason. */
export function drawNotes(paper: Paper, y: number): number {
  const heading = { tag: 'H2', text: 'Notes', follows: LINE * LEAST_LINES + 10 } as const;
  const at = drawHeading(paper, paper.root, heading, y);
  const count = Math.min(MOST_LINES, Math.max(LEAST_LINES, Math.floor((paper.bottom - at - 8) / LINE)));
  return drawRuledLines(paper, at, count);
}
