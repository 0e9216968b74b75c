import { tidyTicks } from '@pullbook/pictures';
import { drawLane } from './draw-lane';
import { drawPullGround, drawPullMarks } from './draw-pulls';
import { face, xOf, type Scene } from './scene';

/** The whole picture: pulls, lanes, time, cursor. */
export function drawTraces(scene: Scene): void {
  const { context, layout, theme } = scene;
  context.fillStyle = theme.sheet;
  context.fillRect(0, 0, layout.width, layout.height);
  drawPullGround(scene);
  drawTime(scene);
  drawMoment(scene);
  for (const lane of layout.lanes) drawLane(scene, lane);
  drawPullMarks(scene);
  drawCursor(scene);
}

/** Seconds below the lanes; when compared, from the common moment. */
function drawTime(scene: Scene): void {
  const { context, layout, theme, state } = scene;
  const { axis, left, right } = layout;
  const ticks = tidyTicks(
    { low: state.window.fromS, high: state.window.toS },
    Math.max(2, (right - left) / 96),
  );
  context.font = face(layout.isNarrow ? 12.5 : 13.5);
  context.textAlign = 'center';
  context.textBaseline = 'top';
  for (const { value, text } of ticks) {
    const x = xOf(scene, value);
    context.strokeStyle = theme.rule;
    context.lineWidth = 1;
    context.beginPath();
    context.moveTo(x, layout.marks.bottom);
    context.lineTo(x, axis.top + 5);
    context.stroke();
    context.fillStyle = theme['ink-soft'];
    // The unit has the last place.
    if (x < right - 16) context.fillText(text, x, axis.top + 9);
  }
  context.fillStyle = theme['ink-soft'];
  context.textAlign = 'end';
  context.fillText('s', right, axis.top + 9);
}

/** The moment that compared pulls have in common. */
function drawMoment(scene: Scene): void {
  const { context, layout, theme, state } = scene;
  if (state.mode === 'log') return;
  const x = xOf(scene, 0);
  if (x < layout.left || x > layout.right) return;
  context.strokeStyle = theme.petrol;
  context.lineWidth = 1.75;
  context.beginPath();
  context.moveTo(x, layout.marks.bottom - 8);
  context.lineTo(x, layout.axis.top);
  context.stroke();
  const text = state.alignment === 'full-load' ? 'full load begins' : '90 % of target reached';
  context.font = face(13.5, 560);
  context.fillStyle = theme.petrol;
  context.textBaseline = 'middle';
  const width = context.measureText(text).width;
  const isLeft = x + width + 8 > layout.right;
  context.textAlign = isLeft ? 'end' : 'start';
  context.fillText(text, isLeft ? x - 6 : x + 6, layout.marks.bottom - 14);
}

function drawCursor(scene: Scene): void {
  const { context, layout, theme, state } = scene;
  const x = xOf(scene, state.cursorS);
  if (x < layout.left - 0.5 || x > layout.right + 0.5) return;
  context.strokeStyle = theme.ink;
  context.lineWidth = 1;
  context.beginPath();
  context.moveTo(x, layout.marks.bottom - 2);
  context.lineTo(x, layout.axis.top + 8);
  context.stroke();
  context.fillStyle = theme.ink;
  context.beginPath();
  context.moveTo(x, layout.axis.top);
  context.lineTo(x - 6, layout.axis.top + 9);
  context.lineTo(x + 6, layout.axis.top + 9);
  context.fill();
}
