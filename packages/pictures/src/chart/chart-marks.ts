import type { Shape } from '../figures/shapes.js';
import { sortOfPull, type SortOfPull } from '../figures/sort-of-pull.js';
import { textWidth } from '../figures/text-width.js';
import type { ChartFigures } from './chart-figures.js';
import type { ChartGround } from './chart-ground.js';

/** One mark on the chart: a pull, or several of one sort that lie too close to be shown apart. */
interface ChartMark {
  readonly sort: SortOfPull;
  readonly count: number;
  readonly text: string;
  /** Where it belongs. */
  readonly x: number;
  readonly y: number;
  readonly halfWidth: number;
}

interface PlacedChartMark extends ChartMark {
  /** Where it is drawn: beside its place, if another mark lies there. */
  readonly atX: number;
}

/** In units of one mark's width: first in place, then right and left by turns. */
const SIDESTEPS = [0, 1, -1, 2, -2] as const;
const SEVERITY: readonly SortOfPull[] = ['void', 'pull', 'over'];

/**
 * Numbered marks of all pulls. Marks of the same duty step aside to left and right, with a leader back to their
 * place; where there is no room for that, the nearest ones of a sort are gathered with their count.
 */
export function chartMarks(figures: ChartFigures, ground: ChartGround): readonly Shape[] {
  let marks: readonly ChartMark[] = figures.pulls.map((pull) => ({
    sort: sortOfPull(pull, figures.ceilingKpa),
    count: 1,
    text: String(pull.number),
    x: ground.x(pull.dutyPct),
    y: ground.y(pull.peakKpa),
    halfWidth: halfWidthOf(String(pull.number), ground),
  }));
  for (;;) {
    const placed = placeAside(marks, ground);
    if (placed) return [...placed.flatMap(leader), ...placed.flatMap((mark) => markShapes(mark, ground))];
    marks = gatherNearest(marks, ground);
  }
}

function placeAside(marks: readonly ChartMark[], ground: ChartGround): readonly PlacedChartMark[] | null {
  const placed: PlacedChartMark[] = [];
  for (const mark of marks) {
    const free = SIDESTEPS.map((steps) => ({ ...mark, atX: mark.x + steps * (mark.halfWidth * 2 + 2) })).find(
      (candidate) =>
        isInside(candidate, ground) &&
        !placed.some((other) => touches(candidate, other, ground) || crosses(candidate, other, ground)),
    );
    if (!free) return null;
    placed.push(free);
  }
  return placed;
}

function isInside(mark: PlacedChartMark, { left, right }: ChartGround): boolean {
  const isInPlace = mark.atX === mark.x;
  return isInPlace || (mark.atX - mark.halfWidth >= left && mark.atX + mark.halfWidth <= right);
}

function touches(a: PlacedChartMark, b: PlacedChartMark, { metrics }: ChartGround): boolean {
  const isBeside = Math.abs(a.atX - b.atX) >= a.halfWidth + b.halfWidth + 1;
  return !isBeside && Math.abs(a.y - b.y) < metrics.markRadius * 2 + 1;
}

/** Whether one's leader runs under the other, which was driven at another duty: it would seem to belong there. */
function crosses(a: PlacedChartMark, b: PlacedChartMark, { metrics }: ChartGround): boolean {
  if (Math.abs(a.y - b.y) >= metrics.markRadius || Math.abs(a.x - b.x) < 1) return false;
  const isUnder = (one: PlacedChartMark, other: PlacedChartMark) =>
    Math.min(one.x, one.atX) < other.atX && other.atX < Math.max(one.x, one.atX);
  return isUnder(a, b) || isUnder(b, a);
}

function gatherNearest(marks: readonly ChartMark[], ground: ChartGround): readonly ChartMark[] {
  const pair =
    nearestPair(marks, (a, b) => a.sort === b.sort) ?? nearestPair(marks, () => true) ?? ([0, 0] as const);
  const [first, second] = [marks[pair[0]], marks[pair[1]]];
  if (!first || !second || first === second) return marks;
  const count = first.count + second.count;
  const share = second.count / count;
  const text = `×${count}`;
  const joined = {
    sort: SEVERITY[Math.max(SEVERITY.indexOf(first.sort), SEVERITY.indexOf(second.sort))] ?? 'pull',
    count,
    text,
    x: first.x + (second.x - first.x) * share,
    y: first.y + (second.y - first.y) * share,
    halfWidth: halfWidthOf(text, ground),
  };
  return marks.flatMap((mark) => {
    if (mark === second) return [];
    return mark === first ? [joined] : [mark];
  });
}

function nearestPair(
  marks: readonly ChartMark[],
  match: (a: ChartMark, b: ChartMark) => boolean,
): readonly [number, number] | null {
  let best: readonly [number, number] | null = null;
  let bestDistance = Number.POSITIVE_INFINITY;
  marks.forEach((mark, index) => {
    for (let at = index + 1; at < marks.length; at += 1) {
      const other = marks[at];
      if (!other || !match(mark, other)) continue;
      const distance = Math.hypot(mark.x - other.x, mark.y - other.y);
      if (distance < bestDistance) [best, bestDistance] = [[index, at], distance];
    }
  });
  return best;
}

function halfWidthOf(text: string, { metrics }: ChartGround): number {
  return Math.max(metrics.markRadius, textWidth(text, metrics.markTextSize) / 2 + metrics.markRadius * 0.35);
}

function leader(mark: PlacedChartMark): Shape[] {
  if (mark.atX === mark.x) return [];
  return [{ kind: 'line', role: 'leader', x1: mark.x, y1: mark.y, x2: mark.atX, y2: mark.y }];
}

function markShapes(mark: PlacedChartMark, { metrics }: ChartGround): Shape[] {
  const { atX, y, halfWidth, sort } = mark;
  const r = metrics.markRadius;
  const isDot = sort !== 'over' && halfWidth <= r;
  const box = { x: atX - halfWidth, y: y - r, width: halfWidth * 2, height: r * 2 };
  const body: Shape = isDot
    ? { kind: 'circle', role: sort, cx: atX, cy: y, r }
    : { kind: 'rect', role: sort, ...box, cornerRadius: sort === 'over' ? 1 : r };
  const size = metrics.markTextSize;
  const text = { x: atX, y: y + size * 0.35, text: mark.text, size, anchor: 'middle' } as const;
  return [body, { kind: 'text', role: `${sort}-text`, ...text, weight: 'bold', turn: 0 }];
}
