import type { Scale } from '../figures/linear-scale.js';
import type { SortOfPull } from '../figures/sort-of-pull.js';
import { sortOfPull } from '../figures/sort-of-pull.js';
import { textWidth } from '../figures/text-width.js';
import type { StripFigures } from './strip-figures.js';
import type { StripMetrics } from './strip-metrics.js';

/** One mark on the strip: a pull, or several that there was no room to show apart. */
export interface StripMark {
  readonly sort: SortOfPull;
  readonly numbers: readonly number[];
  /** Where its lowest and highest pull belong. */
  readonly fromX: number;
  readonly toX: number;
  readonly centreX: number;
  readonly halfWidth: number;
  readonly text: string;
}

export interface PlacedMark extends StripMark {
  /** 0 lies on the wire, the next ones above it. */
  readonly lane: number;
}

/** Where marks may be drawn and how. */
export interface MarkRoom {
  readonly metrics: StripMetrics;
  readonly left: number;
  readonly right: number;
}

const GAP = 1;
/** A gathered mark lists its numbers up to this width, in mark radii. */
const LISTED_WIDTH = 3.6;
const SEVERITY: readonly SortOfPull[] = ['void', 'pull', 'over'];

/**
 * Threads the pulls on the wire: marks that would touch stack upwards, and where the stack is full the nearest ones
 * of a sort are gathered into one mark with their count. Only if even that leaves no room do sorts mix; the
 * gravest of them gives the mark its look then.
 */
export function placeMarks(figures: StripFigures, scale: Scale, room: MarkRoom): readonly PlacedMark[] {
  let marks = figures.pulls
    .map((pull) => {
      const x = scale(pull.peakKpa);
      const sort = sortOfPull(pull, figures.ceilingKpa);
      return makeMark({ sort, numbers: [pull.number], fromX: x, toX: x }, room);
    })
    .sort((a, b) => a.centreX - b.centreX || (a.numbers[0] ?? 0) - (b.numbers[0] ?? 0));
  for (;;) {
    const placed = assignLanes(marks, room.metrics.laneCount);
    if (placed) return placed;
    marks = gatherNearest(marks, room);
  }
}

function assignLanes(marks: readonly StripMark[], laneCount: number): PlacedMark[] | null {
  const ends = Array.from({ length: laneCount }, () => Number.NEGATIVE_INFINITY);
  const placed: PlacedMark[] = [];
  const inOrder = [...marks].sort((a, b) => a.centreX - a.halfWidth - (b.centreX - b.halfWidth));
  for (const mark of inOrder) {
    const start = mark.centreX - mark.halfWidth;
    const lane = ends.findIndex((end) => start >= end + GAP);
    if (lane < 0) return null;
    ends[lane] = mark.centreX + mark.halfWidth;
    placed.push({ ...mark, lane });
  }
  return placed;
}

/** Joins the two nearest marks of one sort, or of any sort where no sort has two. */
function gatherNearest(marks: readonly StripMark[], room: MarkRoom): StripMark[] {
  const pair =
    nearestPair(marks, (a, b) => a.sort === b.sort) ?? nearestPair(marks, () => true) ?? ([0, 0] as const);
  const [first, second] = [marks[pair[0]], marks[pair[1]]];
  if (!first || !second || first === second) return [...marks];
  const sort = SEVERITY[Math.max(SEVERITY.indexOf(first.sort), SEVERITY.indexOf(second.sort))] ?? 'pull';
  const joined = makeMark(
    {
      sort,
      numbers: [...first.numbers, ...second.numbers].sort((a, b) => a - b),
      fromX: Math.min(first.fromX, second.fromX),
      toX: Math.max(first.toX, second.toX),
    },
    room,
  );
  return [...marks.filter((mark) => mark !== first && mark !== second), joined].sort(
    (a, b) => a.centreX - b.centreX,
  );
}

function nearestPair(
  marks: readonly StripMark[],
  match: (a: StripMark, b: StripMark) => boolean,
): readonly [number, number] | null {
  let best: readonly [number, number] | null = null;
  let bestDistance = Number.POSITIVE_INFINITY;
  marks.forEach((mark, index) => {
    const next = marks.findIndex((other, at) => at > index && match(mark, other));
    const other = marks[next];
    if (!other) return;
    const distance = other.centreX - mark.centreX;
    if (distance < bestDistance) [best, bestDistance] = [[index, next], distance];
  });
  return best;
}

function makeMark(
  one: Pick<StripMark, 'sort' | 'numbers' | 'fromX' | 'toX'>,
  { metrics, left, right }: MarkRoom,
): StripMark {
  const text = markText(one.numbers, metrics);
  const ofText = textWidth(text, metrics.markTextSize) / 2 + metrics.markRadius * 0.35;
  const ofSpan = metrics.markRadius + (one.toX - one.fromX) / 2;
  const halfWidth = Math.min((right - left) / 2, Math.max(ofSpan, ofText));
  const middle = one.fromX / 2 + one.toX / 2;
  const centreX = Math.min(right - halfWidth, Math.max(left + halfWidth, middle));
  return { ...one, text, halfWidth, centreX };
}

/** '7' for one pull, '7·9' for few, '3–9' for neighbours in the list, '×6' for six pulls here and there. */
function markText(numbers: readonly number[], metrics: StripMetrics): string {
  const first = numbers[0] ?? 0;
  if (!metrics.isNumbered) return numbers.length === 1 ? '' : `×${numbers.length}`;
  const listed = numbers.join('·');
  if (textWidth(listed, metrics.markTextSize) <= metrics.markRadius * LISTED_WIDTH) return listed;
  const isRun = numbers.every((number, index) => number === first + index);
  return isRun && numbers.length > 1 ? `${first}–${numbers.at(-1) ?? first}` : countText(numbers);
}

function countText(numbers: readonly number[]): string {
  return numbers.length === 1 ? String(numbers[0]) : `×${numbers.length}`;
}
