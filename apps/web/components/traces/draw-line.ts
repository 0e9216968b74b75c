import type { TraceLine } from './lanes-of';
import { lineShape, rowInterval, type LineShape } from './line-shape';
import { originOf, xOf, type Scene } from './scene';
import { widthOf } from './time-window';

/** From a value of the lane to where it stands. */
export type YOf = (value: number) => number;

/** Samples this far apart, px, are shown one by one. */
const DOT_PX = 5;
const DOT_RADIUS = 2.4;
const ENVELOPE_ALPHA = 0.38;

/** Draws one line of a lane. @returns where its last point stands; null where nothing of it is seen */
export function drawLine(scene: Scene, line: TraceLine, yOf: YOf): number | null {
  const origin = originOf(scene, line.pull);
  if (origin === null) return null;
  const { layout, index, reader, state } = scene;
  const window = { fromS: state.window.fromS + origin, toS: state.window.toS + origin };
  const widthPx = Math.round(layout.right - layout.left);
  const shape = lineShape(index, reader, line.channel, { window, widthPx });
  if (shape === null) return null;
  prepare(scene, line);
  const end =
    shape.kind === 'points' ? drawPoints(scene, shape, origin, yOf) : drawColumns(scene, shape, yOf);
  scene.context.setLineDash([]);
  return end;
}

function prepare({ context, theme }: Scene, { look }: TraceLine): void {
  context.strokeStyle = theme[look.tone];
  context.fillStyle = theme[look.tone];
  context.lineWidth = look.width;
  context.lineJoin = 'round';
  context.setLineDash([...look.dash]);
}

function drawPoints(
  scene: Scene,
  { timesS, values }: Extract<LineShape, { kind: 'points' }>,
  origin: number,
  yOf: YOf,
): number | null {
  const { context, index, state, layout } = scene;
  let isOpen = false;
  let lastY: number | null = null;
  context.beginPath();
  values.forEach((value, at) => {
    if (Number.isNaN(value)) {
      isOpen = false;
      return;
    }
    const [x, y] = [xOf(scene, (timesS[at] ?? 0) - origin), yOf(value)];
    if (isOpen) context.lineTo(x, y);
    else context.moveTo(x, y);
    isOpen = true;
    if (x <= layout.right) lastY = y;
  });
  context.stroke();
  const samplePx = (rowInterval(index) / widthOf(state.window)) * (layout.right - layout.left);
  if (samplePx >= DOT_PX) drawDots(scene, timesS, values, { origin, yOf });
  return lastY;
}

function drawDots(
  scene: Scene,
  timesS: readonly number[],
  values: readonly number[],
  { origin, yOf }: { readonly origin: number; readonly yOf: YOf },
): void {
  const { context } = scene;
  context.setLineDash([]);
  context.beginPath();
  values.forEach((value, at) => {
    if (Number.isNaN(value)) return;
    const [x, y] = [xOf(scene, (timesS[at] ?? 0) - origin), yOf(value)];
    context.moveTo(x + DOT_RADIUS, y);
    context.arc(x, y, DOT_RADIUS, 0, 2 * Math.PI);
  });
  context.fill();
}

/** What each column spans as a veil, and its middle as the line. */
function drawColumns(
  scene: Scene,
  { lows, highs }: Extract<LineShape, { kind: 'columns' }>,
  yOf: YOf,
): number | null {
  const { context, layout } = scene;
  let lastY: number | null = null;
  const veil = new Path2D();
  const middle = new Path2D();
  let isOpen = false;
  lows.forEach((low, column) => {
    if (Number.isNaN(low)) {
      isOpen = false;
      return;
    }
    const x = layout.left + column + 0.5;
    const [top, bottom] = [yOf(highs[column] as number), yOf(low)];
    if (bottom - top > 1) veil.rect(x - 0.5, top, 1, bottom - top);
    const y = (top + bottom) / 2;
    if (isOpen) middle.lineTo(x, y);
    else middle.moveTo(x, y);
    isOpen = true;
    lastY = y;
  });
  context.globalAlpha = ENVELOPE_ALPHA;
  context.fill(veil);
  context.globalAlpha = 1;
  context.stroke(middle);
  return lastY;
}
