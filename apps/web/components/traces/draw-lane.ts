import { tidyTicks } from '@pullbook/pictures';
import { drawGoal, goalFigures, goalLevels } from './draw-goal';
import { drawKey, drawNames, drawTitle, type NamedEnd } from './draw-names';
import { drawLine, type YOf } from './draw-line';
import { laneSpan, withRoom, type LaneSpan } from './lane-scale';
import type { Lane, TraceLine } from './lanes-of';
import type { LineLook } from './line-look';
import { lineShape } from './line-shape';
import { face, originOf, unitOfLane, type Scene } from './scene';
import type { TraceLayout } from './lay-out';

const ceilingLook: LineLook = { tone: 'ink', dash: [], width: 4 };
const targetLook: LineLook = { tone: 'petrol', dash: [], width: 1.5 };

/** Height that the name of the unit takes at the top of a lane, with half a figure below it, px. */
const UNIT_ROOM = 20;

type Point = readonly [x: number, y: number];
type PlacedLane = TraceLayout['lanes'][number];

/** One lane: its scale, the goal where boost is drawn, its lines, and their names where they end. */
export function drawLane(scene: Scene, placed: PlacedLane): void {
  const span = spanOfLane(scene, placed.lane);
  const yOf: YOf = (value) =>
    placed.bottom - ((value - span.low) / (span.high - span.low)) * (placed.bottom - placed.top);
  drawScale(scene, placed, span, yOf);
  const { context, layout } = scene;
  context.save();
  context.beginPath();
  context.rect(layout.left, placed.top, layout.right - layout.left, placed.bottom - placed.top);
  context.clip();
  if (placed.lane.hasBoost) drawGoal(scene, placed, yOf);
  const ends = placed.lane.lines.map((line) => ({ line, y: drawLine(scene, line, yOf) }));
  context.restore();
  const goals = placed.lane.hasBoost ? goalLevels(scene) : [];
  if (layout.isNarrow) {
    drawKey(
      scene,
      placed,
      goals.map((goal) => ({ goal, y: yOf(goal.kpa) })),
    );
    return;
  }
  const named: NamedEnd[] = ends.flatMap(({ line: traced, y }) =>
    y === null ? [] : [{ label: traced.label, look: traced.look, y }],
  );
  const levels = goals.map((goal): NamedEnd => ({
    label: goal.text,
    look: goal.isCeiling ? ceilingLook : targetLook,
    y: yOf(goal.kpa),
  }));
  drawNames(scene, placed, [...levels, ...named]);
  if (scene.state.mode === 'compare') drawTitle(scene, placed);
}

function spanOfLane(scene: Scene, lane: Lane): LaneSpan {
  const { state, index } = scene;
  if (!state.fitsHeights) return laneSpan(index, lane, lane.hasBoost ? goalFigures(scene) : []);
  return withRoom(
    lane.lines.flatMap((line) => seenEnds(scene, line)),
    lane.unit,
  );
}

/** Lowest and highest of what is seen of a line. */
function seenEnds(scene: Scene, { channel, pull }: TraceLine): number[] {
  const origin = originOf(scene, pull);
  const { index, reader, state, layout } = scene;
  if (origin === null) return [];
  const window = { fromS: state.window.fromS + origin, toS: state.window.toS + origin };
  const widthPx = Math.round(layout.right - layout.left);
  const shape = lineShape(index, reader, channel, { window, widthPx });
  if (shape === null) return [];
  const [lows, highs] = shape.kind === 'columns' ? [shape.lows, shape.highs] : [shape.values, shape.values];
  return [least(lows), -least(highs, -1)];
}

function least(values: ArrayLike<number>, sign = 1): number {
  let best = Infinity;
  for (let at = 0; at < values.length; at += 1) {
    const value = sign * (values[at] as number);
    if (value < best) best = value;
  }
  return best;
}

function drawScale(scene: Scene, { lane, top, bottom }: PlacedLane, span: LaneSpan, yOf: YOf): void {
  const { context, theme, layout, units } = scene;
  const { word, scale, offset } = unitOfLane(lane.unit, units);
  const shown = { low: span.low * scale + offset, high: span.high * scale + offset };
  const mostTicks = lane.hasBoost ? 5 : 3;
  context.lineWidth = 1;
  context.font = face(layout.isNarrow ? 12.5 : 13.5);
  context.textAlign = 'end';
  context.textBaseline = 'middle';
  for (const { value, text } of tidyTicks(shown, mostTicks)) {
    const y = yOf((value - offset) / scale);
    if (y < top + 7 || y > bottom - 2) continue;
    context.strokeStyle = value === 0 && lane.hasBoost ? theme['rule-strong'] : theme.rule;
    line(context, [layout.left, y], [layout.right, y]);
    context.fillStyle = theme['ink-soft'];
    // The top of the lane is the unit's.
    if (y >= top + UNIT_ROOM) context.fillText(text, layout.left - 6, y);
  }
  context.strokeStyle = theme['rule-strong'];
  line(context, [layout.left, bottom], [layout.right, bottom]);
  context.fillStyle = theme['ink-soft'];
  context.textBaseline = 'top';
  context.font = face(layout.isNarrow ? 12.5 : 13.5, 560);
  context.fillText(word, layout.left - 6, top - 3);
}

function line(context: CanvasRenderingContext2D, from: Point, to: Point): void {
  context.beginPath();
  context.moveTo(...from);
  context.lineTo(...to);
  context.stroke();
}
