import type { PressureFormat } from './pressure-format.js';
import type { Picture, Shape, TextShape } from './shapes.js';
import { textWidth } from './text-width.js';

/** What the tests of pictures measure with; not part of the package's door. */
export const inKpa: PressureFormat = { unit: 'kPa', kpaPerUnit: 1, write: (kpa) => kpa.toFixed(0) };
export const inBar: PressureFormat = { unit: 'bar', kpaPerUnit: 100, write: (kpa) => (kpa / 100).toFixed(2) };

interface Box {
  readonly name: string;
  readonly x1: number;
  readonly x2: number;
  readonly y1: number;
  readonly y2: number;
}

const SLACK = 0.01;

/** Shapes that reach outside the picture, by name; lines of text by their estimated width. */
export function outOfBounds({ shapes, width, height }: Picture): readonly string[] {
  return shapes
    .map(boxOf)
    .filter(
      ({ x1, x2, y1, y2 }) => !(x1 >= -SLACK && x2 <= width + SLACK && y1 >= -SLACK && y2 <= height + SLACK),
    )
    .map(({ name, x1, x2, y1, y2 }) => `${name} ${x1} ${x2} ${y1} ${y2}`);
}

/** Pairs of texts that touch, and texts in or beside a mark that touch another mark. */
export function overlaps({ shapes }: Picture): readonly string[] {
  const texts = shapes.filter((shape): shape is TextShape => shape.kind === 'text').map(boxOf);
  return texts.flatMap((a, index) =>
    texts
      .slice(index + 1)
      .filter((b) => a.x1 < b.x2 - SLACK && b.x1 < a.x2 - SLACK && a.y1 < b.y2 - SLACK && b.y1 < a.y2 - SLACK)
      .map((b) => `${a.name} | ${b.name}`),
  );
}

function boxOf(shape: Shape): Box {
  const name = shape.kind === 'text' ? `${shape.role} '${shape.text}'` : `${shape.kind} ${shape.role}`;
  switch (shape.kind) {
    case 'line': {
      const { x1, x2, y1, y2 } = shape;
      return { name, x1: Math.min(x1, x2), x2: Math.max(x1, x2), y1: Math.min(y1, y2), y2: Math.max(y1, y2) };
    }
    case 'rect':
      return { name, x1: shape.x, x2: shape.x + shape.width, y1: shape.y, y2: shape.y + shape.height };
    case 'circle': {
      const { cx, cy, r } = shape;
      return { name, x1: cx - r, x2: cx + r, y1: cy - r, y2: cy + r };
    }
    case 'path':
      return boxOfPath(shape.d, name);
    case 'text':
      return boxOfText(shape, name);
  }
}

function boxOfPath(d: string, name: string): Box {
  const values = (d.match(/-?[\d.e+-]+/g) ?? ['0', '0']).map(Number);
  const xs = values.filter((_, index) => index % 2 === 0);
  const ys = values.filter((_, index) => index % 2 === 1);
  return { name, x1: Math.min(...xs), x2: Math.max(...xs), y1: Math.min(...ys), y2: Math.max(...ys) };
}

function boxOfText(shape: TextShape, name: string): Box {
  const width = textWidth(shape.text, shape.size);
  const before = { start: 0, middle: width / 2, end: width }[shape.anchor];
  const x1 = shape.x - before;
  return { name, x1, x2: x1 + width, y1: shape.y - shape.size * 0.72, y2: shape.y + shape.size * 0.05 };
}
