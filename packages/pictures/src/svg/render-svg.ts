import type { Picture, Shape, TextShape } from '../figures/shapes.js';
import { shapeClass } from './shape-class.js';

const ESCAPES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/**
 * A picture as an SVG element for a page: looks come from `pictureCss` by class, the text alternative stands in
 * `aria-label`. Every text is escaped.
 *
 * @param className of the svg element, beside `picture`
 * @returns `<svg ...>...</svg>`, as wide as its place
 */
export function renderSvg(picture: Picture, className = ''): string {
  const { width, height, shapes, description } = picture;
  const names = escapeText(`picture ${className}`.trim());
  const open = `<svg class="${names}" viewBox="0 0 ${write(width)} ${write(height)}" role="img"`;
  return `${open} aria-label="${escapeText(description)}">${shapes.map(renderShape).join('')}</svg>`;
}

function renderShape(shape: Shape): string {
  const name = `class="${shapeClass(shape)}"`;
  switch (shape.kind) {
    case 'line':
      return `<line ${name} ${numbers({ x1: shape.x1, y1: shape.y1, x2: shape.x2, y2: shape.y2 })}/>`;
    case 'rect': {
      const { x, y, width, height, cornerRadius } = shape;
      return `<rect ${name} ${numbers({ x, y, width, height, rx: cornerRadius })}/>`;
    }
    case 'circle':
      return `<circle ${name} ${numbers({ cx: shape.cx, cy: shape.cy, r: shape.r })}/>`;
    case 'path':
      return `<path ${name} d="${escapeText(shape.d)}"/>`;
    case 'text':
      return renderText(shape, name);
  }
}

function renderText(shape: TextShape, name: string): string {
  const { x, y, size, turn } = shape;
  const turned = turn === 0 ? '' : ` transform="rotate(${write(turn)} ${write(x)} ${write(y)})"`;
  const weight = shape.weight === 'bold' ? ' font-weight="700"' : '';
  const place = `${numbers({ x, y, 'font-size': size })} text-anchor="${shape.anchor}"`;
  return `<text ${name} ${place}${weight}${turned}>${escapeText(shape.text)}</text>`;
}

function numbers(values: Readonly<Record<string, number>>): string {
  return Object.entries(values)
    .map(([name, value]) => `${name}="${write(value)}"`)
    .join(' ');
}

function write(value: number): string {
  return String(Math.round(value * 100) / 100);
}

function escapeText(text: string): string {
  return text.replace(/[&<>"']/g, (letter) => ESCAPES[letter] ?? letter);
}
