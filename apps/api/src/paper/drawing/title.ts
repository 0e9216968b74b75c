import type { Letterhead } from '@pullbook/contracts';
import { ink } from './inks.js';
import type { Paper } from './open-paper.js';
import { drawQrCode } from './qr-code.js';
import { drawOrnament, drawTagged } from './tagged.js';
import { breakText, drawBlock, drawText, type TextStyle } from './text-block.js';

export interface PaperTitle {
  readonly letterhead: Letterhead;
  readonly title: string;
  readonly plate: string;
  readonly model: string;
  readonly url: string;
  readonly urlPurpose: string;
}

const QR = 84;
const NAME = { size: 9.5, weight: 'bold' } as const;
const REACH = { size: 8.5, weight: 'regular', colour: ink.soft } as const;
const TITLE = { size: 17, weight: 'bold' } as const;
const PLATE = { size: 25, weight: 'bold' } as const;
const MODEL = { size: 13, weight: 'bold' } as const;

/** The head of a paper: whose, what, which car, and the code that leads to its screen. @returns new y */
export function drawTitle(paper: Paper, title: PaperTitle): number {
  const { doc, root, left, right, top } = paper;
  const width = right - left - QR - 16;
  let y = drawLetterhead(paper, title.letterhead, width);
  drawTagged(doc, root, { tag: 'H1' }, () => {
    y += drawText(doc, title.title, TITLE, { x: left, y, width }) + 8;
  });
  y += drawCar(paper, title, y, width);
  drawQrCode(paper, root, title.url, { x: right - QR, y: top - 4, size: QR, alt: title.urlPurpose });
  const below = Math.max(y, top + QR) + 8;
  drawOrnament(doc, () => {
    doc.lineWidth(1.2).moveTo(left, below).lineTo(right, below).stroke(ink.text);
  });
  return below + 8;
}

/** The workshop's name, and below it where it is and how it is reached; each as long as it needs. @returns new y */
function drawLetterhead({ doc, root, left, top }: Paper, head: Letterhead, width: number): number {
  let y = top;
  const write = (text: string, style: TextStyle): void => {
    drawTagged(doc, root, { tag: 'P' }, () => {
      y += drawText(doc, text, style, { x: left, y, width });
    });
  };
  write(head.name, NAME);
  for (const line of head.lines) write(line, REACH);
  return head.lines.length === 0 ? y : y + 4;
}

/** The plate in its frame, the model beside it. @returns the height that was used */
function drawCar({ doc, root, left }: Paper, title: PaperTitle, y: number, width: number): number {
  const plate = breakText(doc, title.plate, PLATE, width * 0.6);
  const plateWidth = Math.min(width * 0.6, plate.width) + 24;
  const height = plate.height + 4;
  drawOrnament(doc, () => doc.lineWidth(1.6).roundedRect(left, y, plateWidth, height, 4).stroke(ink.text));
  drawTagged(doc, root, { tag: 'P' }, () => {
    drawBlock(doc, plate, { x: left, y: y + 2, width: plateWidth, align: 'center' });
  });
  const x = left + plateWidth + 14;
  const model = breakText(doc, title.model, MODEL, left + width - x);
  drawTagged(doc, root, { tag: 'P' }, () => {
    const at = y + Math.max(0, (height - model.height) / 2);
    drawBlock(doc, model, { x, y: at, width: left + width - x });
  });
  return Math.max(height, model.height);
}
