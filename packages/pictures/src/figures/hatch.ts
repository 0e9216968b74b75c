import type { PathShape } from './shapes.js';

/** Slanting lines that fill a rectangle, cut at its edges: tells a block apart without colour. */
export function hatch(
  box: { readonly x: number; readonly y: number; readonly width: number; readonly height: number },
  pitch: number,
): PathShape {
  const { x, y, width, height } = box;
  const parts: string[] = [];
  const count = Math.min(400, Math.floor((width + height) / pitch));
  for (let index = 1; index <= count; index += 1) {
    const along = index * pitch;
    const start = along <= height ? [x, y + along] : [x + along - height, y + height];
    const end = along <= width ? [x + along, y] : [x + width, y + along - width];
    if ((start[0] ?? 0) >= x + width) break;
    parts.push(`M${place(start)}L${place(end)}`);
  }
  return { kind: 'path', role: 'hatch', d: parts.join('') };
}

function place(point: readonly number[]): string {
  return point.map((value) => round(value)).join(' ');
}

function round(value: number): string {
  return String(Math.round(value * 100) / 100);
}
