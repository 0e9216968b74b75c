import type { Shape, ShapeRole } from '../figures/shapes.js';
import { textWidth } from '../figures/text-width.js';
import type { MapFigures, MapSpot } from './map-figures.js';
import { TEXT_SIZE, type MapGround } from './map-ground.js';
import { mapIslands } from './map-islands.js';

const MARK_RADIUS = 10;

interface Box {
  readonly x1: number;
  readonly x2: number;
  readonly y1: number;
  readonly y2: number;
}

/** What wants to stand near a place: a word, or a numbered mark. */
interface Wanted {
  readonly spot: MapSpot;
  readonly text: string;
  readonly role: ShapeRole;
  /** Drawn around the text. */
  readonly mark?: 'pull' | 'over';
}

/** Right and left, above and below, near first: in units of the label's own size. */
const PLACES = [
  ...([
    [1, 0],
    [-1, 0],
    [0, -1],
    [0, 1],
    [1, -1],
    [1, 1],
    [-1, -1],
    [-1, 1],
  ] as const),
  ...([
    [2, 0],
    [-2, 0],
    [0, -2],
    [0, 2],
    [2, -1],
    [-2, 1],
    [3, 0],
    [-3, 0],
  ] as const),
] as const;

/**
 * Marks of the pulls, letters of the engine's lines, shaft speeds, the words surge and choke: each beside its place where
 * nothing stands yet; what finds no room is left out, and stands in the table alone.
 */
export function mapLabels(figures: MapFigures, ground: MapGround): readonly Shape[] {
  const taken: Box[] = [];
  return wantedOf(figures).flatMap((wanted) => {
    const placed = placeNear(wanted, ground, taken);
    if (placed === null) return [];
    taken.push(placed.box);
    return placed.shapes;
  });
}

/** What matters most comes first and finds room. */
function wantedOf({ lines, goals, pulls }: MapFigures): readonly Wanted[] {
  const wanted = (spot: MapSpot | undefined, text: string, role: ShapeRole): Wanted[] =>
    spot === undefined ? [] : [{ spot, text, role }];
  const [slowest, fastest] = [lines[0], lines.at(-1)];
  return [
    ...pulls.map(({ peak, number, isOutside }): Wanted => {
      const mark = isOutside ? 'over' : 'pull';
      return { spot: peak, text: String(number), role: `${mark}-text`, mark };
    }),
    ...goals.flatMap(({ spots, letter }) => wanted(spots.at(-1), letter, 'goal-text')),
    ...lines.flatMap(({ spots, shaftSpeedRpm }) =>
      wanted(spots.at(-1), `${Math.round(shaftSpeedRpm / 1000)}k`, 'tick-text'),
    ),
    ...wanted(fastest?.spots[0], 'surge', 'axis-text'),
    ...wanted(slowest?.spots.at(-1), 'choke', 'axis-text'),
    ...mapIslands(lines).flatMap(({ top, text }) => wanted(top, text, 'island-text')),
  ];
}

interface Placed {
  readonly box: Box;
  readonly shapes: readonly Shape[];
}

function placeNear(wanted: Wanted, ground: MapGround, taken: readonly Box[]): Placed | null {
  const half = halfOf(wanted);
  const at = { x: ground.x(wanted.spot.flowKgPerS), y: ground.y(wanted.spot.pressureRatio) };
  // A mark stands on its place if it can; a word never does, it would hide it.
  const places = wanted.mark === undefined ? PLACES : [[0, 0] as const, ...PLACES];
  for (const [right, down] of places) {
    const middle = { x: at.x + right * (half.x + 6), y: at.y + down * (half.y + 6) };
    const box = {
      ...{ x1: middle.x - half.x, x2: middle.x + half.x },
      ...{ y1: middle.y - half.y, y2: middle.y + half.y },
    };
    if (!isInside(box, ground) || taken.some((other) => touches(box, other))) continue;
    return { box, shapes: [...leader(wanted, at, middle), ...drawn(wanted, middle, half)] };
  }
  return null;
}

function halfOf({ text, mark }: Wanted): { readonly x: number; readonly y: number } {
  const half = textWidth(text, TEXT_SIZE) / 2;
  if (mark === undefined) return { x: half, y: TEXT_SIZE * 0.5 };
  return { x: Math.max(MARK_RADIUS, half + 4), y: MARK_RADIUS };
}

function isInside({ x1, x2, y1, y2 }: Box, { left, right, top, bottom }: MapGround): boolean {
  return x1 >= left + 1 && x2 <= right && y1 >= top && y2 <= bottom - 1;
}

function touches(a: Box, b: Box): boolean {
  return a.x1 < b.x2 + 1 && b.x1 < a.x2 + 1 && a.y1 < b.y2 + 1 && b.y1 < a.y2 + 1;
}

interface Place {
  readonly x: number;
  readonly y: number;
}

function leader({ mark }: Wanted, at: Place, middle: Place): Shape[] {
  if (mark === undefined || (at.x === middle.x && at.y === middle.y)) return [];
  return [{ kind: 'line', role: 'leader', x1: at.x, y1: at.y, x2: middle.x, y2: middle.y }];
}

function drawn({ text, role, mark }: Wanted, middle: Place, half: Place): Shape[] {
  const common = { x: middle.x, y: middle.y + TEXT_SIZE * 0.33, size: TEXT_SIZE, anchor: 'middle' } as const;
  const word: Shape = { kind: 'text', role, text, ...common, weight: mark ? 'bold' : 'normal', turn: 0 };
  if (mark === undefined) return [word];
  const box = { x: middle.x - half.x, y: middle.y - half.y, width: half.x * 2, height: half.y * 2 };
  return [{ kind: 'rect', role: mark, ...box, cornerRadius: mark === 'over' ? 1 : half.y }, word];
}
