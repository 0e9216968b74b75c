import { spreadLabels } from '@pullbook/pictures';
import type { GoalLevel } from './draw-goal';
import type { Lane } from './lanes-of';
import type { LineLook } from './line-look';
import { face, type Scene } from './scene';

/** Where a line ends, and what it is called. */
export interface NamedEnd {
  readonly label: string;
  readonly look: LineLook;
  readonly y: number;
}

interface Box {
  readonly top: number;
  readonly bottom: number;
}

const NAME_PX = 17;
const SAMPLE_PX = 22;

/** Names beside the ends of the lines, moved apart where they would touch; the first stay longest. */
export function drawNames(scene: Scene, { top, bottom }: Box, ends: readonly NamedEnd[]): void {
  const { context, layout, theme } = scene;
  const seen = ends.map((end) => ({ ...end, y: Math.min(bottom, Math.max(top, end.y)) }));
  const places = spreadLabels(
    seen.map(({ y }, index) => ({ at: y, extent: NAME_PX, weight: seen.length - index })),
    { start: top - 5, end: bottom + 5, gap: 0 },
  );
  context.font = face(13.5, 500);
  context.textAlign = 'start';
  context.textBaseline = 'middle';
  seen.forEach(({ label, look, y }, index) => {
    const at = places[index];
    if (at === null || at === undefined) return;
    context.strokeStyle = theme['rule-strong'];
    context.lineWidth = 1;
    context.beginPath();
    context.moveTo(layout.right + 1, y);
    context.lineTo(layout.right + 7, at);
    context.stroke();
    drawSample(scene, look, layout.right + 8, at);
    context.fillStyle = theme.ink;
    const room = layout.width - layout.right - SAMPLE_PX - 16;
    context.fillText(fitting(context, label, room), layout.right + SAMPLE_PX + 13, at + 0.5);
  });
}

interface PlacedGoal {
  readonly goal: GoalLevel;
  readonly y: number;
}

/**
 * On a phone the names stand in the lane's upper corner, or below where the ceiling runs through that, each behind a
 * piece of its line; goals beside their level.
 */
export function drawKey(
  scene: Scene,
  { lane, top, bottom }: Box & { readonly lane: Lane },
  goals: readonly PlacedGoal[],
): void {
  const { context, layout, state } = scene;
  context.font = face(12.5, 500);
  context.textBaseline = 'middle';
  for (const goal of goals) drawGoalWord(scene, goal);
  const from = keyFrom({ top, bottom }, goals.length === 0 || state.mode === 'compare');
  let [x, y] = [layout.left + 6, from.y];
  if (state.mode === 'compare') {
    drawTitle(scene, { lane, top });
    y += NAME_PX;
    // The same pulls in every lane: told once.
    if (layout.lanes[0]?.lane !== lane) return;
  }
  for (const { label, look } of lane.lines) {
    const width = SAMPLE_PX + 5 + context.measureText(label).width;
    if (x + width > layout.right && x > layout.left + 6) [x, y] = [layout.left + 6, y + from.nextPx];
    word(scene, { text: label, x: x + SAMPLE_PX + 4, y, width: width - SAMPLE_PX - 4 }, SAMPLE_PX + 4);
    drawSample(scene, look, x, y);
    x += width + 12;
  }
}

/** Where the names begin, and how far further the next line of them stands. */
const keyFrom = ({ top, bottom }: Box, isUpper: boolean) =>
  isUpper ? { y: top + 8, nextPx: NAME_PX } : { y: bottom - 10, nextPx: -NAME_PX };

function drawGoalWord(scene: Scene, { goal, y }: PlacedGoal): void {
  const { width } = scene.context.measureText(goal.text);
  const x = scene.layout.right - width - 4;
  word(scene, { text: goal.text, x, y: goal.isCeiling ? y - 11 : y + 12, width });
}

/** What a lane of compared pulls shows. */
export function drawTitle(scene: Scene, { lane, top }: { readonly lane: Lane; readonly top: number }): void {
  const { context, layout } = scene;
  context.font = face(layout.isNarrow ? 12.5 : 13.5, 660);
  context.textBaseline = 'middle';
  const { width } = context.measureText(lane.title);
  word(scene, { text: lane.title, x: layout.left + 6, y: top + 8, width });
  context.font = face(12.5, 500);
}

interface Word {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly width: number;
}

/** Words over lines, on a piece of the ground so that they can be read. */
function word({ context, theme }: Scene, { text, x, y, width }: Word, beforePx = 0): void {
  context.fillStyle = theme.sheet;
  context.globalAlpha = 0.82;
  context.fillRect(x - 3 - beforePx, y - 8, width + 6 + beforePx, 16);
  context.globalAlpha = 1;
  context.fillStyle = theme.ink;
  context.textAlign = 'start';
  context.fillText(text, x, y + 0.5);
}

function drawSample({ context, theme }: Scene, look: LineLook, x: number, y: number): void {
  context.strokeStyle = theme[look.tone];
  context.lineWidth = look.width;
  context.setLineDash([...look.dash]);
  context.beginPath();
  context.moveTo(x, y);
  context.lineTo(x + SAMPLE_PX, y);
  context.stroke();
  context.setLineDash([]);
}

function fitting(context: CanvasRenderingContext2D, text: string, room: number): string {
  if (context.measureText(text).width <= room) return text;
  let short = text;
  while (short.length > 1 && context.measureText(`${short}…`).width > room) short = short.slice(0, -1);
  return `${short}…`;
}
