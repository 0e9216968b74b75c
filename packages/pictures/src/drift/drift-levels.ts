import { hatch } from '../figures/hatch.js';
import type { Shape } from '../figures/shapes.js';
import { spreadLabels } from '../figures/spread-labels.js';
import { textWidth } from '../figures/text-width.js';
import type { DriftFigures } from './drift-figures.js';
import { TEXT_SIZE, type DriftGround } from './drift-ground.js';

const plain = { kind: 'text', size: TEXT_SIZE, weight: 'normal', turn: 0 } as const;

/** Grid, tolerance band, target, centre and the ceiling's wall, to lie under everything else. */
export function driftLevels(figures: DriftFigures, ground: DriftGround): readonly Shape[] {
  const { left, right, top, bottom, y, ticks, levels } = ground;
  const { targetKpa, toleranceKpa, ceilingKpa } = figures;
  const across = { x1: left, x2: right };
  const shapes: Shape[] = ticks.map(({ kpa }) => ({
    ...{ kind: 'line', role: 'grid', ...across, y1: y(kpa), y2: y(kpa) },
  })) as Shape[];
  if (ceilingKpa !== null) {
    const box = { x: left, y: top, width: right - left, height: Math.max(0, y(ceilingKpa) - top) };
    shapes.push({ kind: 'rect', role: 'beyond', ...box, cornerRadius: 0 });
  }
  if (targetKpa !== null) {
    const from = y(targetKpa + toleranceKpa);
    const box = {
      x: left,
      y: from,
      width: right - left,
      height: Math.max(1, y(targetKpa - toleranceKpa) - from),
    };
    shapes.push({ kind: 'rect', role: 'band', ...box, cornerRadius: 0 }, hatch(box, 11));
  }
  for (const { role, kpa } of levels) {
    shapes.push({ kind: 'line', role, ...across, y1: y(kpa), y2: y(kpa) });
  }
  shapes.push({ kind: 'line', role: 'axis', ...across, y1: bottom, y2: bottom });
  return shapes;
}

/** Figures at the left, names of levels at the right, visits below. */
export function driftTexts(ground: DriftGround, unit: string): readonly Shape[] {
  const { left, y, ticks } = ground;
  const figures = ticks
    .filter(({ text }) => textWidth(text, TEXT_SIZE) <= left - 6)
    .map(({ kpa, text }): Shape => {
      return { ...plain, role: 'tick-text', x: left - 6, y: y(kpa) + TEXT_SIZE * 0.35, text, anchor: 'end' };
    });
  const name = `peak ${unit}`;
  return [
    ...figures,
    { ...plain, role: 'axis-text', x: 0, y: TEXT_SIZE, text: name, anchor: 'start' },
    ...levelNames(ground),
    ...visitNames(ground),
  ];
}

function levelNames({ levels, y, top, bottom, right, width }: DriftGround): Shape[] {
  const middles = spreadLabels(
    levels.map(({ kpa, weight }) => ({ at: y(kpa), extent: TEXT_SIZE * 1.15, weight })),
    { start: top - TEXT_SIZE, end: bottom, gap: 2 },
  );
  return levels.flatMap(({ role, text }, index): Shape[] => {
    const middle = middles[index];
    if (middle === null || middle === undefined) return [];
    if (right + 6 + textWidth(text, TEXT_SIZE) > width) return [];
    const place = { x: right + 6, y: middle + TEXT_SIZE * 0.35, anchor: 'start' } as const;
    const weight = role === 'wall' ? 'bold' : 'normal';
    return [{ ...plain, role: `${role}-text`, text, weight, ...place }];
  });
}

/** 'visit 7' under its pulls, '7' where that has no room, nothing where even that has none. */
function visitNames({ stretches, bottom, width }: DriftGround): Shape[] {
  const y = bottom + TEXT_SIZE * 1.5;
  let free = 0;
  return stretches.flatMap(({ visitNumber, from, to }): Shape[] => {
    const x = (from + to) / 2;
    const text = [`visit ${visitNumber}`, String(visitNumber)].find((one) => {
      const half = textWidth(one, TEXT_SIZE) / 2;
      return x - half >= free && x + half <= Math.min(width, Math.max(to, x + half));
    });
    if (text === undefined) return [];
    free = x + textWidth(text, TEXT_SIZE) / 2 + 6;
    return [{ ...plain, role: 'tick-text', x, y, text, anchor: 'middle' }];
  });
}
