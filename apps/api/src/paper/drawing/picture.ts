import type { Picture, Shape, ShapeRole } from '@pullbook/pictures';
import { ink } from './inks.js';
import type { Paper } from './open-paper.js';
import { drawTagged } from './tagged.js';
import { drawAtBaseLine } from './text-block.js';

interface Look {
  readonly fill?: string;
  readonly stroke?: string;
  readonly width?: number;
  readonly dash?: readonly [number, number];
}

const LOOKS: Readonly<Partial<Record<ShapeRole, Look>>> = {
  axis: { stroke: ink.rule, width: 1.2 },
  tick: { stroke: ink.rule, width: 0.7 },
  grid: { stroke: ink.faint, width: 0.5 },
  band: { fill: '#e3eeec', stroke: '#64807d', width: 0.6 },
  hatch: { stroke: '#93b3af', width: 0.5 },
  target: { stroke: ink.petrol, width: 0.9 },
  beyond: { fill: '#e4e2dc' },
  wall: { stroke: ink.text, width: 3.2 },
  base: { stroke: ink.soft, width: 0.9, dash: [1.5, 1.8] },
  next: { stroke: ink.petrol, width: 1.4, dash: [3.4, 2.6] },
  pull: { fill: ink.petrol, stroke: ink.petrol, width: 1 },
  void: { fill: ink.ground, stroke: ink.petrol, width: 1 },
  over: { fill: ink.text, stroke: ink.text, width: 1 },
  'curve-band': { fill: '#e3e9e7' },
  curve: { stroke: ink.petrol, width: 1.4 },
  leader: { stroke: ink.soft, width: 0.6 },
};

const TEXT_INKS: Readonly<Partial<Record<ShapeRole, string>>> = {
  'pull-text': ink.ground,
  'over-text': ink.ground,
  'void-text': ink.petrol,
  'next-text': ink.petrol,
  'tick-text': ink.soft,
  'axis-text': ink.soft,
  'base-text': ink.soft,
  'note-text': ink.amber,
};

/** A picture as vectors, tagged as a figure with its text alternative. @returns the height that was used */
export function drawPicture(
  { doc }: Paper,
  parent: PDFKit.PDFStructureElement,
  picture: Picture,
  place: { readonly x: number; readonly y: number },
): number {
  const bbox = [place.x, place.y, place.x + picture.width, place.y + picture.height] as const;
  drawTagged(doc, parent, { tag: 'Figure', alt: picture.description, bbox }, () => {
    doc.save().translate(place.x, place.y);
    for (const shape of picture.shapes) drawShape(doc, shape);
    doc.restore();
  });
  return picture.height;
}

function drawShape(doc: PDFKit.PDFDocument, shape: Shape): void {
  if (shape.kind === 'text') {
    const style = {
      size: shape.size,
      weight: shape.weight === 'bold' ? 'bold' : 'regular',
      colour: TEXT_INKS[shape.role] ?? ink.text,
    } as const;
    drawAtBaseLine(doc, shape.text, style, shape);
    return;
  }
  trace(doc, shape);
  paint(doc, LOOKS[shape.role] ?? { stroke: ink.text });
}

function paint(doc: PDFKit.PDFDocument, look: Look): void {
  doc.lineWidth(look.width ?? 1);
  if (look.dash) doc.dash(look.dash[0], { space: look.dash[1] });
  if (look.fill && look.stroke) doc.fillAndStroke(look.fill, look.stroke);
  else if (look.fill) doc.fill(look.fill);
  else doc.stroke(look.stroke ?? ink.text);
  doc.undash();
}

function trace(doc: PDFKit.PDFDocument, shape: Exclude<Shape, { kind: 'text' }>): void {
  switch (shape.kind) {
    case 'line':
      doc.moveTo(shape.x1, shape.y1).lineTo(shape.x2, shape.y2);
      return;
    case 'rect':
      doc.roundedRect(shape.x, shape.y, shape.width, shape.height, shape.cornerRadius);
      return;
    case 'circle':
      doc.circle(shape.cx, shape.cy, shape.r);
      return;
    case 'path':
      doc.path(shape.d);
  }
}
