import { splitByFace, type Weight } from './faces.js';
import { ink } from './inks.js';

export interface TextStyle {
  readonly size: number;
  readonly weight: Weight;
  readonly colour?: string;
}

export interface TextPlace {
  readonly x: number;
  /** Top of the first line. */
  readonly y: number;
  readonly width: number;
  readonly align?: 'left' | 'right' | 'center';
}

/** Line height and where the base line stands in it, in sizes. */
const LEADING = 1.32;
const BASE_LINE = 0.98;
/** Kerning, and figures of one width. */
const FEATURES: PDFKit.Mixins.OpenTypeFeatures[] = ['kern', 'tnum'];

/** A text broken into lines that fit a width. */
export interface TextBlock {
  readonly lines: readonly string[];
  readonly style: TextStyle;
  readonly height: number;
  /** Of the longest line. */
  readonly width: number;
}

/** Breaks at spaces and at line ends, in words only where a word is wider than the line. */
export function breakText(doc: PDFKit.PDFDocument, text: string, style: TextStyle, width: number): TextBlock {
  const lines = cleanText(text)
    .split('\n')
    .flatMap((paragraph) => breakParagraph(doc, paragraph, style, width));
  const longest = Math.max(...lines.map((line) => widthOf(doc, line, style)));
  return { lines, style, height: lines.length * style.size * LEADING, width: longest };
}

/** The first lines of a block; where there are more, the last one kept ends in '…', so that the cut is seen. */
export function keepLines(doc: PDFKit.PDFDocument, block: TextBlock, count: number): TextBlock {
  const { lines, style, width } = block;
  if (lines.length <= count) return block;
  const kept = lines.slice(0, count);
  const last = [...(kept.pop() ?? '')];
  while (last.length > 0 && widthOf(doc, `${last.join('')}…`, style) > width) last.pop();
  return { lines: [...kept, `${last.join('')}…`], style, height: count * style.size * LEADING, width };
}

/** Draws a broken text; its place on the page is the caller's care. */
export function drawBlock(doc: PDFKit.PDFDocument, block: TextBlock, place: TextPlace): void {
  block.lines.forEach((line, index) => {
    drawLine(doc, line, block.style, { ...place, y: place.y + index * block.style.size * LEADING });
  });
}

/** Breaks and draws at once. @returns the height that was used */
export function drawText(doc: PDFKit.PDFDocument, text: string, style: TextStyle, place: TextPlace): number {
  const block = breakText(doc, text, style, place.width);
  drawBlock(doc, block, place);
  return block.height;
}

/** One line, `y` being the base line; for the words in pictures. */
export function drawAtBaseLine(
  doc: PDFKit.PDFDocument,
  text: string,
  style: TextStyle,
  place: { readonly x: number; readonly y: number; readonly anchor: 'start' | 'middle' | 'end' },
): void {
  const width = widthOf(doc, text, style);
  const before = { start: 0, middle: width / 2, end: width }[place.anchor];
  drawLine(doc, text, style, { x: place.x - before, y: place.y - style.size * BASE_LINE, width });
}

function drawLine(doc: PDFKit.PDFDocument, line: string, style: TextStyle, place: TextPlace): void {
  if (line === '') return;
  const room = place.align ? place.width - widthOf(doc, line, style) : 0;
  let x = place.x + (place.align === 'right' ? room : place.align === 'center' ? room / 2 : 0);
  for (const run of splitByFace(doc, line, style.weight)) {
    doc
      .font(run.face)
      .fontSize(style.size)
      .fillColor(style.colour ?? ink.text);
    const at = place.y + style.size * BASE_LINE;
    doc.text(run.text, x, at, { lineBreak: false, features: FEATURES, baseline: 'alphabetic' });
    x += doc.widthOfString(run.text, { features: FEATURES });
  }
}

function widthOf(doc: PDFKit.PDFDocument, text: string, style: TextStyle): number {
  return splitByFace(doc, text, style.weight).reduce(
    (sum, run) =>
      sum + doc.font(run.face).fontSize(style.size).widthOfString(run.text, { features: FEATURES }),
    0,
  );
}

/** Composed letters, no control characters, one kind of space and of line end. */
function cleanText(text: string): string {
  return text
    .normalize('NFC')
    .replace(/\r\n?|\u2028|\u2029/g, '\n')
    .replace(/[^\S\n\u00a0]+/g, ' ')
    .replace(/[\p{Cc}\p{Cf}]/gu, (letter) => (letter === '\n' ? letter : ''));
}

function breakParagraph(
  doc: PDFKit.PDFDocument,
  paragraph: string,
  style: TextStyle,
  width: number,
): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of paragraph.split(' ').flatMap((whole) => breakWord(doc, whole, style, width))) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (line !== '' && widthOf(doc, longer, style) > width) {
      lines.push(line);
      line = word;
    } else line = longer;
  }
  return [...lines, line];
}

function breakWord(doc: PDFKit.PDFDocument, word: string, style: TextStyle, width: number): string[] {
  if (widthOf(doc, word, style) <= width) return [word];
  const pieces = [''];
  for (const letter of word) {
    const longer = (pieces.at(-1) ?? '') + letter;
    if (pieces.at(-1) !== '' && widthOf(doc, longer, style) > width) pieces.push(letter);
    else pieces[pieces.length - 1] = longer;
  }
  return pieces;
}
