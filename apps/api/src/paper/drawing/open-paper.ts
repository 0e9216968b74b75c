import PDFDocument from 'pdfkit';
import { registerFaces } from './faces.js';
import { ink } from './inks.js';
import { breakText, drawBlock, drawText, keepLines, type TextBlock } from './text-block.js';

export type PaperSize = 'a4' | 'letter';

/** A document being drawn, and the frame that its pages have in common; pt, y downwards from the top edge. */
export interface Paper {
  readonly doc: PDFKit.PDFDocument;
  /** What assistive technology reads: all content hangs below it, in reading order. */
  readonly root: PDFKit.PDFStructureElement;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  /** Content ends here; the foot line stands below. */
  readonly bottom: number;
}

export interface PaperOptions {
  readonly size: PaperSize;
  readonly title: string;
  readonly author: string;
  /** Stands at the foot of every page, left of the page number. */
  readonly foot: string;
  /** The workshop's own lines at the foot of every page, above it; cut visibly after two lines each. */
  readonly footLines: readonly string[];
  readonly madeAt: Date;
}

const MARGIN = 38;
const FOOT = 30;
const FOOT_SIZE = 8;
const FOOT_STYLE = { size: FOOT_SIZE, weight: 'regular', colour: ink.soft } as const;

/**
 * Opens a tagged PDF, lets `draw` fill it, numbers its pages.
 *
 * @returns the finished file
 */
export async function makePaper(options: PaperOptions, draw: (paper: Paper) => void): Promise<Buffer> {
  const doc = openDocument(options);
  const chunks: Buffer[] = [];
  doc.on('data', (chunk: Buffer) => chunks.push(chunk));
  const ended = new Promise<void>((resolve, reject) => doc.on('end', resolve).on('error', reject));
  registerFaces(doc);
  const root = doc.struct('Document');
  doc.addStructure(root);
  const { width, height } = doc.page;
  const own = options.footLines.map((line) =>
    keepLines(doc, breakText(doc, line, FOOT_STYLE, width - 2 * MARGIN), 2),
  );
  const ownHeight = own.reduce((sum, block) => sum + block.height, 0);
  const paper = {
    doc,
    root,
    left: MARGIN,
    right: width - MARGIN,
    top: MARGIN,
    bottom: height - MARGIN - FOOT - ownHeight,
  };
  draw(paper);
  root.end();
  numberPages(paper, options.foot, own);
  doc.end();
  await ended;
  return Buffer.concat(chunks);
}

/** Goes on at the top of a new page if `height` does not fit below `y`. */
export function makeRoom(paper: Paper, y: number, height: number): number {
  if (y + height <= paper.bottom) return y;
  paper.doc.addPage();
  return paper.top;
}

function openDocument({ size, title, author, madeAt }: PaperOptions): PDFKit.PDFDocument {
  // The published types do not know the subset 'PDF/UA' yet, the library does.
  const subset = { subset: 'PDF/UA' } as unknown as Pick<PDFKit.PDFDocumentOptions, 'subset'>;
  const info = {
    Title: title,
    Author: author,
    Creator: 'Pullbook',
    Producer: 'Pullbook',
    CreationDate: madeAt,
  };
  return new PDFDocument({
    ...subset,
    size: size === 'a4' ? 'A4' : 'LETTER',
    margin: 0,
    lang: 'en-GB',
    tagged: true,
    displayTitle: true,
    pdfVersion: '1.7',
    bufferPages: true,
    info,
    // No default typeface: PDF/UA wants every one embedded, and ours are named as they are used.
    font: '',
  });
}

function numberPages(paper: Paper, foot: string, own: readonly TextBlock[]): void {
  const { doc, left, right, bottom } = paper;
  const { start, count } = doc.bufferedPageRange();
  const ofPaper = keepLines(doc, breakText(doc, foot, FOOT_STYLE, right - left - 80), 1);
  for (let index = 0; index < count; index += 1) {
    doc.switchToPage(start + index);
    doc.markContent('Artifact', { type: 'Pagination' });
    let y = bottom + FOOT - FOOT_SIZE;
    doc
      .lineWidth(0.5)
      .moveTo(left, y - 6)
      .lineTo(right, y - 6)
      .stroke(ink.rule);
    for (const block of own) {
      drawBlock(doc, block, { x: left, y, width: right - left });
      y += block.height;
    }
    drawBlock(doc, ofPaper, { x: left, y, width: right - left - 80 });
    const number = `page ${index + 1} of ${count}`;
    drawText(doc, number, FOOT_STYLE, { x: right - 80, y, width: 80, align: 'right' });
    doc.endMarkedContent();
  }
}
