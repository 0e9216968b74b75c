import type { Shape } from '../figures/shapes.js';
import { textWidth } from '../figures/text-width.js';
import type { DriftFigures, DriftSince } from './drift-figures.js';
import { TEXT_SIZE, type DriftGround } from './drift-ground.js';

const MOST_RADIUS = 10;
/** Below this a mark has no room for its number. */
const LEAST_NUMBERED = 9;
const LEAST_RADIUS = 2.5;

/** Limits of both charts over the pulls since the baseline, and the moving average as a line. */
export function driftLimits({ baseline, since }: DriftFigures, ground: DriftGround): readonly Shape[] {
  if (since.length === 0) return [];
  const { places, half, y } = ground;
  const steps = (valueOf: (pull: DriftSince) => number): string =>
    since
      .map((pull, index) => {
        const x = places[baseline.length + index] ?? 0;
        const level = round(y(valueOf(pull)));
        return `${index === 0 ? 'M' : 'L'}${round(x - half)} ${level}L${round(x + half)} ${level}`;
      })
      .join('');
  const line = since
    .map(({ averageKpa }, index) => {
      const x = places[baseline.length + index] ?? 0;
      return `${index === 0 ? 'M' : 'L'}${round(x)} ${round(y(averageKpa))}`;
    })
    .join('');
  return [
    { kind: 'path', role: 'limit', d: steps(({ lowKpa }) => lowKpa) },
    { kind: 'path', role: 'limit', d: steps(({ highKpa }) => highKpa) },
    { kind: 'path', role: 'limit-average', d: steps(({ averageLowKpa }) => averageLowKpa) },
    { kind: 'path', role: 'limit-average', d: steps(({ averageHighKpa }) => averageHighKpa) },
    { kind: 'path', role: 'curve', d: line },
  ];
}

/** A mark for each pull: pale in the baseline, filled since, square outside of its limits; a flag where a rule fired. */
export function driftMarks(figures: DriftFigures, ground: DriftGround): readonly Shape[] {
  const { baseline, since, firedAt } = figures;
  const { places, y, half } = ground;
  const r = Math.max(LEAST_RADIUS, Math.min(MOST_RADIUS, half - 1));
  const mark = (role: 'past' | 'pull' | 'over', at: { x: number; kpa: number; number: number }): Shape[] => {
    const place = { x: at.x, y: y(at.kpa) };
    const body: Shape =
      role === 'over'
        ? { kind: 'rect', role, x: place.x - r, y: place.y - r, width: 2 * r, height: 2 * r, cornerRadius: 1 }
        : { kind: 'circle', role, cx: place.x, cy: place.y, r };
    const text = String(at.number);
    if (r < LEAST_NUMBERED || textWidth(text, TEXT_SIZE) > 2 * r) return [body];
    const words = { text, size: TEXT_SIZE, anchor: 'middle', weight: 'bold', turn: 0 } as const;
    return [
      body,
      { kind: 'text', role: `${role}-text`, x: place.x, y: place.y + TEXT_SIZE * 0.35, ...words },
    ];
  };
  const placed = (index: number): number => places[index] ?? 0;
  return [
    ...averageMarks(figures, ground),
    ...baseline.flatMap(({ kpa, number }, index) => mark('past', { x: placed(index), kpa, number })),
    ...since.flatMap(({ kpa, number, isOut }, index) =>
      mark(isOut ? 'over' : 'pull', { x: placed(baseline.length + index), kpa, number }),
    ),
    ...(firedAt === null ? [] : flag(placed(baseline.length + firedAt), ground)),
  ];
}

/** Where the average lies outside its limits it has a square of its own. */
function averageMarks({ baseline, since }: DriftFigures, { places, y }: DriftGround): Shape[] {
  return since.flatMap(({ averageKpa, isAverageOut }, index): Shape[] => {
    if (!isAverageOut) return [];
    const box = { x: (places[baseline.length + index] ?? 0) - 4, y: y(averageKpa) - 4, width: 8, height: 8 };
    return [{ kind: 'rect', role: 'over', ...box, cornerRadius: 0 }];
  });
}

/** Says over the plot, and shows by a line down through it, at which pull the alarm fired. */
function flag(x: number, { top, bottom, right, left }: DriftGround): Shape[] {
  const text = '▲ alarm';
  const half = textWidth(text, TEXT_SIZE) / 2;
  const at = Math.max(left + half, Math.min(right - half, x));
  return [
    { kind: 'line', role: 'fired', x1: x, x2: x, y1: top - 4, y2: bottom },
    {
      ...{ kind: 'text', role: 'note-text', x: at, y: top - 8, text, size: TEXT_SIZE },
      ...{ anchor: 'middle', weight: 'bold', turn: 0 },
    } as const,
  ];
}

function round(value: number): number {
  return Math.round(value * 100) / 100;
}
