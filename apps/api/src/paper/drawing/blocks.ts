import { ink } from './inks.js';
import { makeRoom, type Paper } from './open-paper.js';
import { drawGroup, drawOrnament, drawTagged } from './tagged.js';
import { breakText, drawBlock, drawText, type TextStyle } from './text-block.js';

type Element = PDFKit.PDFStructureElement;

const HEADINGS: Readonly<Record<'H1' | 'H2' | 'H3', TextStyle>> = {
  H1: { size: 20, weight: 'bold' },
  H2: { size: 13, weight: 'bold' },
  H3: { size: 10.5, weight: 'bold' },
};
const BODY: TextStyle = { size: 9.5, weight: 'regular' };
const LABEL: TextStyle = { size: 8, weight: 'regular', colour: ink.soft };
const VALUE: TextStyle = { size: 10.5, weight: 'bold' };

/** A heading, kept on one page with `follows` pt of what comes after it. @returns new y */
export function drawHeading(
  paper: Paper,
  parent: Element,
  {
    tag,
    text,
    follows,
  }: { readonly tag: 'H1' | 'H2' | 'H3'; readonly text: string; readonly follows: number },
  y: number,
): number {
  const { doc, left, right } = paper;
  const block = breakText(doc, text, HEADINGS[tag], right - left);
  const at = makeRoom(paper, y, block.height + follows);
  drawTagged(doc, parent, { tag }, () => drawBlock(doc, block, { x: left, y: at, width: right - left }));
  return at + block.height + 3;
}

/** A paragraph over the whole width. @returns new y */
export function drawParagraph(paper: Paper, parent: Element, text: string, y: number): number {
  const { doc, left, right } = paper;
  const block = breakText(doc, text, BODY, right - left);
  const at = makeRoom(paper, y, block.height);
  drawTagged(doc, parent, { tag: 'P' }, () => drawBlock(doc, block, { x: left, y: at, width: right - left }));
  return at + block.height + 4;
}

/** A value with its name above it; an empty one is a line to write on. */
export interface Fact {
  readonly label: string;
  readonly value: string;
  /** Share of the row; all together 1. */
  readonly share: number;
}

/** A row of facts, each in its column. @returns new y */
export function drawFacts(paper: Paper, parent: Element, facts: readonly Fact[], y: number): number {
  const { doc, left, right } = paper;
  const gap = 12;
  const widths = facts.map(({ share }) => share * (right - left) - gap);
  const blocks = facts.map(({ value }, index) => breakText(doc, value, VALUE, widths[index] ?? 0));
  const height = 12 + Math.max(16, ...blocks.map((block) => block.height));
  const at = makeRoom(paper, y, height);
  let x = left;
  facts.forEach(({ label, value, share }, index) => {
    const width = widths[index] ?? 0;
    const place = { x, width };
    drawTagged(doc, parent, { tag: 'P' }, () => {
      drawText(doc, label, LABEL, { ...place, y: at });
      const block = blocks[index];
      if (block) drawBlock(doc, block, { ...place, y: at + 11 });
    });
    if (value === '') drawWritingLine(paper, { x, y: at + 25, width });
    x += share * (right - left);
  });
  return at + height + 4;
}

/** A line to write on. */
export function drawWritingLine(
  { doc }: Paper,
  { x, y, width }: { readonly x: number; readonly y: number; readonly width: number },
): void {
  drawOrnament(doc, () => {
    doc
      .lineWidth(0.6)
      .moveTo(x, y)
      .lineTo(x + width, y)
      .stroke(ink.rule);
  });
}

/** What must not be missed: numbered, on a ground of its own, with a heavy rule at its side. @returns new y */
export function drawMind(
  paper: Paper,
  parent: Element,
  { title, lines }: { readonly title: string; readonly lines: readonly string[] },
  y: number,
): number {
  const { doc, left, right } = paper;
  const inner = { x: left + 16, width: right - left - 28 };
  const head = breakText(doc, title, { size: 10.5, weight: 'bold' }, inner.width);
  const blocks = lines.map((line) => breakText(doc, line, BODY, inner.width - 14));
  const height = head.height + blocks.reduce((sum, block) => sum + block.height + 2, 0) + 18;
  const at = makeRoom(paper, y, height);
  drawOrnament(doc, () => {
    doc.rect(left, at, right - left, height).fill(ink.mind);
    doc.rect(left, at, 5, height).fill(ink.text);
  });
  drawTagged(doc, parent, { tag: 'H2' }, () => drawBlock(doc, head, { ...inner, y: at + 8 }));
  let line = at + 10 + head.height;
  drawGroup(doc, parent, 'L', (list) => {
    blocks.forEach((block, index) => {
      drawGroup(doc, list, 'LI', (item) => {
        const number = { size: BODY.size, weight: 'bold' } as const;
        drawTagged(doc, item, { tag: 'Lbl' }, () => {
          drawText(doc, String(index + 1), number, { ...inner, y: line });
        });
        drawTagged(doc, item, { tag: 'LBody' }, () => {
          drawBlock(doc, block, { x: inner.x + 14, width: inner.width - 14, y: line });
        });
      });
      line += block.height + 2;
    });
  });
  return at + height + 10;
}
