import type { TracePull } from '@pullbook/contracts';
import { face, xOf, type Scene } from './scene';

/** How a pull's mark is told apart without colour: filled, hollow, or a square where it passed the ceiling. */
export type PullMark = 'usable' | 'not-usable' | 'past-ceiling';

export function pullMark({ usable, peakKpa, record }: TracePull): PullMark {
  const ceiling = record?.ceilingKpa ?? null;
  if (peakKpa !== null && ceiling !== null && peakKpa > ceiling) return 'past-ceiling';
  return usable ? 'usable' : 'not-usable';
}

/** The verdict in a word or two. */
export function verdictOf(pull: TracePull): string {
  const mark = pullMark(pull);
  if (mark === 'past-ceiling') return 'past the ceiling';
  if (mark === 'usable') return 'usable';
  return `not usable: ${pull.reasons[0]?.code.replaceAll('-', ' ') ?? 'see below'}`;
}

export const groundOf = {
  usable: 'petrol-soft',
  'not-usable': 'rule',
  'past-ceiling': 'amber-soft',
} as const;

const RADIUS = 11;
const HATCH_PX = 9;

/** Start and end of each pull through all lanes; unusable ones hatched. Drawn before the lines. */
export function drawPullGround(scene: Scene): void {
  const { layout, state, context, theme, index } = scene;
  if (state.mode === 'compare') return;
  const [top, bottom] = [layout.marks.bottom, layout.axis.top];
  for (const pull of index.pulls) {
    const from = Math.max(layout.left, xOf(scene, pull.startS));
    const to = Math.min(layout.right, xOf(scene, pull.endS));
    if (to < layout.left || from > layout.right) continue;
    const mark = pullMark(pull);
    context.fillStyle = theme[groundOf[mark]];
    context.globalAlpha = 0.42;
    context.fillRect(from, top, Math.max(1, to - from), bottom - top);
    context.globalAlpha = 1;
    if (mark === 'not-usable') hatch(scene, { from, to, top, bottom });
    post(scene, xOf(scene, pull.startS), { top: top - 6, bottom, width: 1.75 });
    post(scene, xOf(scene, pull.endS), { top: top - 6, bottom, width: 1 });
  }
}

/** Numbered marks above the lanes, with the verdict in words where there is room. Drawn after the lines. */
export function drawPullMarks(scene: Scene): void {
  const { layout, state, index } = scene;
  if (state.mode === 'compare') return;
  let freeFrom = layout.left;
  for (const pull of index.pulls) {
    const [start, end] = [xOf(scene, pull.startS), xOf(scene, pull.endS)];
    if (end < layout.left || start > layout.right) continue;
    const x = Math.min(layout.right - RADIUS, Math.max(start, layout.left + RADIUS));
    if (x - RADIUS < freeFrom - 1) continue;
    drawMark(scene, pull, x, layout.marks.top + RADIUS + 4);
    const next = index.pulls[pull.index + 1];
    const roomTo =
      next === undefined ? layout.width : Math.min(layout.width, xOf(scene, next.startS) - RADIUS);
    freeFrom = x + RADIUS + 3 + words(scene, pull, x + RADIUS + 7, roomTo);
  }
}

function words({ context, theme, layout }: Scene, pull: TracePull, x: number, roomTo: number): number {
  const text = verdictOf(pull);
  context.font = face(14, 560);
  const { width } = context.measureText(text);
  if (x + width > roomTo - 4) return 0;
  context.fillStyle = pullMark(pull) === 'usable' ? theme['ink-soft'] : theme.amber;
  context.textAlign = 'start';
  context.textBaseline = 'middle';
  context.fillText(text, x, layout.marks.top + RADIUS + 4.5);
  return width + 6;
}

/** One numbered mark about a point. */
export function drawMark(
  { context, theme }: Pick<Scene, 'context' | 'theme'>,
  pull: TracePull,
  x: number,
  y: number,
): void {
  const mark = pullMark(pull);
  const colour = mark === 'past-ceiling' ? theme.amber : theme.petrol;
  context.beginPath();
  if (mark === 'past-ceiling') context.rect(x - RADIUS, y - RADIUS, 2 * RADIUS, 2 * RADIUS);
  else context.arc(x, y, RADIUS, 0, 2 * Math.PI);
  context.fillStyle = mark === 'not-usable' ? theme.sheet : colour;
  context.fill();
  context.strokeStyle = colour;
  context.lineWidth = 1.75;
  context.stroke();
  context.fillStyle =
    mark === 'not-usable' ? colour : mark === 'past-ceiling' ? theme.sheet : theme['on-petrol'];
  context.font = face(13, 700);
  context.textAlign = 'center';
  context.textBaseline = 'middle';
  context.fillText(String(pull.index + 1), x, y + 0.5);
}

function post(
  { context, theme, layout }: Scene,
  x: number,
  { top, bottom, width }: { readonly top: number; readonly bottom: number; readonly width: number },
): void {
  if (x < layout.left - 1 || x > layout.right + 1) return;
  context.strokeStyle = theme.petrol;
  context.lineWidth = width;
  context.beginPath();
  context.moveTo(x, top);
  context.lineTo(x, bottom);
  context.stroke();
}

function hatch(
  { context, theme }: Scene,
  box: { readonly from: number; readonly to: number; readonly top: number; readonly bottom: number },
): void {
  context.save();
  context.beginPath();
  context.rect(box.from, box.top, box.to - box.from, box.bottom - box.top);
  context.clip();
  context.strokeStyle = theme['rule-strong'];
  context.lineWidth = 1;
  context.beginPath();
  const height = box.bottom - box.top;
  for (let x = box.from - height; x < box.to; x += HATCH_PX) {
    context.moveTo(x, box.bottom);
    context.lineTo(x + height, box.top);
  }
  context.stroke();
  context.restore();
}
