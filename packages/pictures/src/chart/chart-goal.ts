import { hatch } from '../figures/hatch.js';
import type { Shape, ShapeRole } from '../figures/shapes.js';
import { textWidth } from '../figures/text-width.js';
import { spreadLabels } from '../figures/spread-labels.js';
import type { ChartFigures } from './chart-figures.js';
import type { ChartGround } from './chart-ground.js';

/** Tolerance band, target line, base and ceiling wall across the plot. */
export function chartGoal(figures: ChartFigures, ground: ChartGround): readonly Shape[] {
  const { left, right, top, bottom, y, metrics } = ground;
  const { targetKpa, toleranceKpa, ceilingKpa, baseKpa } = figures;
  const shapes: Shape[] = [];
  if (ceilingKpa !== null) {
    const wall = y(ceilingKpa);
    const box = { x: left, y: top, width: right - left, height: wall - top };
    shapes.push({ kind: 'rect', role: 'beyond', ...box, cornerRadius: 0 });
  }
  if (targetKpa !== null) {
    const from = Math.max(top, y(targetKpa + toleranceKpa));
    const to = Math.min(bottom, y(targetKpa - toleranceKpa));
    const box = { x: left, y: from, width: right - left, height: Math.max(1, to - from) };
    shapes.push({ kind: 'rect', role: 'band', ...box, cornerRadius: 0 }, hatch(box, metrics.markRadius));
    shapes.push({ kind: 'line', role: 'target', x1: left, x2: right, y1: y(targetKpa), y2: y(targetKpa) });
  }
  if (baseKpa !== null) {
    shapes.push({ kind: 'line', role: 'base', x1: left, x2: right, y1: y(baseKpa), y2: y(baseKpa) });
  }
  if (ceilingKpa !== null) {
    shapes.push({ kind: 'line', role: 'wall', x1: left, x2: right, y1: y(ceilingKpa), y2: y(ceilingKpa) });
  }
  return shapes;
}

/** The levels' names, at their right ends. */
export function chartLevelTexts(figures: ChartFigures, ground: ChartGround): readonly Shape[] {
  const { top, bottom, right, y, metrics, levelTexts } = ground;
  const size = metrics.labelTextSize;
  const at = (kpa: number | null, otherwise: number): number => (kpa === null ? otherwise : y(kpa));
  const levels: { role: ShapeRole; text: string; at: number; weight: number }[] = [];
  const add = (role: ShapeRole, text: string | null, place: number, weight: number): void => {
    if (text !== null) levels.push({ role, text, at: place, weight });
  };
  add(
    figures.ceilingKpa === null ? 'note-text' : 'wall-text',
    levelTexts.ceiling,
    at(figures.ceilingKpa, top),
    9,
  );
  const besideCeiling = top + size * 2;
  add(
    figures.targetKpa === null ? 'note-text' : 'target-text',
    levelTexts.target,
    at(figures.targetKpa, besideCeiling),
    3,
  );
  add('base-text', levelTexts.base, at(figures.baseKpa, bottom), 2);
  const room = { start: top - size * 0.5, end: bottom - size * 0.4, gap: 2 };
  const middles = spreadLabels(
    levels.map((level) => ({ at: level.at, extent: size * 1.1, weight: level.weight })),
    room,
  );
  return levels.flatMap(({ role, text }, index) => {
    const middle = middles[index];
    if (middle === null || middle === undefined) return [];
    if (right + 6 + textWidth(text, size) > ground.width) return [];
    const weight = role === 'wall-text' ? 'bold' : 'normal';
    const place = { x: right + 6, y: middle + size * 0.35, anchor: 'start', turn: 0 } as const;
    return [{ kind: 'text', role, text, size, weight, ...place } as const];
  });
}
