import { letterheadOf, type Units } from '@pullbook/contracts';
import { drawFacts, drawHeading, drawMind } from './drawing/blocks.js';
import { makePaper, type Paper, type PaperSize } from './drawing/open-paper.js';
import { drawTagged } from './drawing/tagged.js';
import { breakText, drawBlock } from './drawing/text-block.js';
import { drawTitle } from './drawing/title.js';
import type { JobSheet } from './job-sheet.js';
import { drawBlankPreset, drawPresetPulls, PRESET_ROOM } from './job-sheet-preset.js';
import { drawReadiness } from './job-sheet-readiness.js';
import { drawNotes, drawRuledLines } from './ruled-lines.js';
import { pressureFormat } from './pressure-format.js';
import { writeInstant, writeInstantAndZone } from './write-instant.js';

export interface PaperChoice {
  readonly paper: PaperSize;
  readonly pressure: Units['pressure'];
}

/**
 * The page that travels with the car, as a tagged PDF: what is known is printed, what is not has room for a pen.
 *
 * @returns the file
 */
export async function jobSheetPdf(sheet: JobSheet, choice: PaperChoice): Promise<Buffer> {
  const printed = writeInstantAndZone(sheet.printedAt, sheet.paperHeader.timeZone);
  const foot = `visit ${sheet.visitNumber} · ${sheet.plate} · printed ${printed} by ${sheet.printedBy}`;
  const letterhead = letterheadOf(sheet.workshopName, sheet.paperHeader);
  const options = {
    size: choice.paper,
    title: `Job sheet, visit ${sheet.visitNumber}, ${sheet.plate}`,
    author: sheet.workshopName,
    foot,
    footLines: letterhead.footLines,
    madeAt: new Date(sheet.printedAt),
  };
  const format = pressureFormat(choice.pressure);
  return makePaper(options, (paper) => {
    const { root } = paper;
    let y = drawTitle(paper, {
      letterhead,
      title: `Job sheet, visit ${sheet.visitNumber}`,
      plate: sheet.plate,
      model: sheet.modelYear === null ? sheet.model : `${sheet.model}, ${sheet.modelYear}`,
      url: sheet.visitUrl,
      urlPurpose: 'QR code that opens this visit',
    });
    y = drawFacts(paper, root, carFacts(sheet), y);
    y = drawFacts(paper, root, visitFacts(sheet), y);
    y = drawWishes(paper, sheet.wishes, y);
    y = drawMind(paper, root, { title: 'Before the first pull', lines: sheet.cautions }, y);
    y = drawReadiness(paper, sheet, format, y);
    const dutyRange = sheet.controller?.dutyPct ?? null;
    // Where the first preset does not fit any more, the rest of the page is for notes.
    const notesFirst = y + PRESET_ROOM + 24 > paper.bottom;
    if (notesFirst) y = drawNotes(paper, y);
    for (const preset of sheet.presets) y = drawPresetPulls(paper, { preset, dutyRange }, format, y);
    if (sheet.presets.length === 0) y = drawBlankPreset(paper, format, y);
    if (!notesFirst) drawNotes(paper, y);
  });
}

function carFacts(sheet: JobSheet): Parameters<typeof drawFacts>[2] {
  const { controller } = sheet;
  return [
    { label: 'Customer', value: sheet.customerName, share: 0.32 },
    { label: 'Phone', value: sheet.customerPhone ?? '', share: 0.22 },
    { label: 'Controller', value: controller?.name ?? '', share: 0.34 },
    { label: 'Loop', value: controller?.loop ?? '', share: 0.12 },
  ];
}

function visitFacts(sheet: JobSheet): Parameters<typeof drawFacts>[2] {
  const when = (iso: string | null): string =>
    iso === null ? '' : writeInstant(iso, sheet.paperHeader.timeZone);
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
