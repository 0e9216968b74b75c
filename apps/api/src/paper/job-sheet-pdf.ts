import type { Units } from '@pullbook/contracts';
import { drawFacts, drawHeading, drawMind } from './drawing/blocks.js';
import { ink } from './drawing/inks.js';
import { makePaper, type Paper, type PaperSize } from './drawing/open-paper.js';
import { drawQrCode } from './drawing/qr-code.js';
import { drawOrnament, drawTagged } from './drawing/tagged.js';
import { breakText, drawBlock, drawText } from './drawing/text-block.js';
import type { JobSheet } from './job-sheet.js';
import { drawPresetPulls } from './job-sheet-preset.js';
import { drawReadiness } from './job-sheet-readiness.js';
import { drawNotes, drawRuledLines } from './ruled-lines.js';
import { pressureFormat } from './pressure-format.js';
import { writeInstant } from './write-instant.js';

export interface PaperChoice {
  readonly paper: PaperSize;
  readonly pressure: Units['pressure'];
}

const QR = 84;

/**
 * The page that travels with the car, as a tagged PDF: what is known is printed, what is not has room for a pen.
 *
 * @returns the file
 */
export async function jobSheetPdf(sheet: JobSheet, choice: PaperChoice): Promise<Buffer> {
  const foot = `visit ${sheet.visitNumber} · ${sheet.plate} · printed ${writeInstant(sheet.printedAt)} by ${sheet.printedBy}`;
  const options = {
    size: choice.paper,
    title: `Job sheet, visit ${sheet.visitNumber}, ${sheet.plate}`,
    author: sheet.workshopName,
    foot,
    madeAt: new Date(sheet.printedAt),
  };
  const format = pressureFormat(choice.pressure);
  return makePaper(options, (paper) => {
    const { root } = paper;
    let y = drawHead(paper, sheet);
    y = drawFacts(paper, root, carFacts(sheet), y);
    y = drawFacts(paper, root, visitFacts(sheet), y);
    y = drawWishes(paper, sheet.wishes, y);
    y = drawMind(paper, root, { title: 'Before the first pull', lines: sheet.cautions }, y);
    y = drawReadiness(paper, sheet, format, y);
    for (const preset of sheet.presets) y = drawPresetPulls(paper, preset, format, y);
    drawNotes(paper, y);
  });
}

function drawHead(paper: Paper, sheet: JobSheet): number {
  const { doc, root, left, right, top } = paper;
  const width = right - left - QR - 16;
  drawTagged(doc, root, { tag: 'P' }, () => {
    const style = { size: 9.5, weight: 'regular', colour: ink.soft } as const;
    drawText(doc, sheet.workshopName, style, { x: left, y: top, width });
  });
  drawTagged(doc, root, { tag: 'H1' }, () => {
    const style = { size: 17, weight: 'bold' } as const;
    drawText(doc, `Job sheet, visit ${sheet.visitNumber}`, style, { x: left, y: top + 13, width });
  });
  const plate = breakText(doc, sheet.plate, { size: 25, weight: 'bold' }, width * 0.6);
  const plateY = top + 44;
  const plateWidth = Math.min(width * 0.6, doc.widthOfString(sheet.plate) + 24);
  drawOrnament(doc, () => {
    doc
      .lineWidth(1.6)
      .roundedRect(left, plateY, plateWidth, plate.height + 4, 4)
      .stroke(ink.text);
  });
  drawTagged(doc, root, { tag: 'P' }, () => {
    drawBlock(doc, plate, { x: left + 2, y: plateY + 2, width: plateWidth - 4, align: 'center' });
  });
  const year = sheet.modelYear === null ? '' : `, ${sheet.modelYear}`;
  drawTagged(doc, root, { tag: 'P' }, () => {
    const style = { size: 13, weight: 'bold' } as const;
    const x = left + plateWidth + 14;
    drawText(doc, `${sheet.model}${year}`, style, { x, y: plateY + 9, width: left + width - x });
  });
  const qr = { x: right - QR, y: top - 4, size: QR, alt: 'QR code that opens this visit' };
  drawQrCode(paper, root, sheet.visitUrl, qr);
  const below = plateY + plate.height + 18;
  drawOrnament(doc, () => {
    doc.lineWidth(1.2).moveTo(left, below).lineTo(right, below).stroke(ink.text);
  });
  return below + 8;
}

function carFacts(sheet: JobSheet): Parameters<typeof drawFacts>[2] {
  const { controller } = sheet;
  const loop = controller ? `${controller.name} (${controller.loop} loop)` : '';
  return [
    { label: 'Customer', value: sheet.customerName, share: 0.34 },
    { label: 'Phone', value: sheet.customerPhone ?? '', share: 0.26 },
    { label: 'Controller', value: loop, share: 0.4 },
  ];
}

function visitFacts(sheet: JobSheet): Parameters<typeof drawFacts>[2] {
  const when = (iso: string | null): string => (iso === null ? '' : writeInstant(iso));
  return [
    { label: 'Tuner', value: sheet.tunerName ?? '', share: 0.24 },
    { label: 'Bay', value: sheet.bay ?? '', share: 0.14 },
    { label: 'Booked for', value: when(sheet.bookedFor), share: 0.31 },
    { label: 'Promised for', value: when(sheet.promisedAt), share: 0.31 },
  ];
}

function drawWishes(paper: Paper, wishes: string, y: number): number {
  const { doc, root, left, right } = paper;
  const at = drawHeading(paper, root, { tag: 'H2', text: 'What the customer wants', follows: 40 }, y);
  if (wishes.trim() === '') return drawRuledLines(paper, at - 4, 2);
  const block = breakText(doc, wishes, { size: 10, weight: 'regular' }, right - left);
  drawTagged(doc, root, { tag: 'P' }, () => drawBlock(doc, block, { x: left, y: at, width: right - left }));
  return at + block.height + 10;
}
