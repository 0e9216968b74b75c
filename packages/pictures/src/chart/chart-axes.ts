import type { PressureFormat } from '../figures/pressure-format.js';
import type { Shape } from '../figures/shapes.js';
import { textWidth } from '../figures/text-width.js';
import { tidyTicks } from '../figures/tidy-ticks.js';
import type { ChartFigures } from './chart-figures.js';
import type { ChartGround } from './chart-ground.js';

/** Grid lines and axes, to lie under everything else. */
export function chartGrid(ground: ChartGround): readonly Shape[] {
  const { left, right, bottom, y } = ground;
  const grid = ground.boostTicks.map((tick): Shape => ({
    kind: 'line',
    role: 'grid',
    x1: left,
    x2: right,
    y1: y(tick.kpa),
    y2: y(tick.kpa),
  }));
  return [...grid, { kind: 'line', role: 'axis', x1: left, x2: right, y1: bottom, y2: bottom }];
}

/** Figures and names of both axes, and the next pull's duty over its bar. */
export function chartAxisTexts(
  figures: ChartFigures,
  ground: ChartGround,
  format: PressureFormat,
): readonly Shape[] {
  return [...boostTexts(ground), ...dutyTexts(ground), ...headTexts(figures, ground, `peak ${format.unit}`)];
}

function boostTexts({ boostTicks, left, y, metrics }: ChartGround): Shape[] {
  const size = metrics.tickTextSize;
  const readable = boostTicks.filter((tick) => textWidth(tick.text, size) <= left - 6);
  return readable.map((tick) => ({
    kind: 'text',
    role: 'tick-text',
    x: left - 6,
    y: y(tick.kpa) + size * 0.35,
    text: tick.text,
    size,
    anchor: 'end',
    weight: 'normal',
    turn: 0,
  }));
}

function dutyTexts(ground: ChartGround): Shape[] {
  const { dutySpan, left, right, bottom, x, metrics } = ground;
  const size = metrics.tickTextSize;
  const y = bottom + size * 1.4;
  const common = { kind: 'text', y, size, weight: 'normal', turn: 0 } as const;
  const ticks = tidyTicks(dutySpan, Math.max(1, Math.min(10, (right - left) / (size * 3.5))));
  const shapes: Shape[] = [{ ...common, role: 'axis-text', x: right + 6, anchor: 'start', text: 'duty %' }];
  let free = Number.NEGATIVE_INFINITY;
  for (const tick of ticks) {
    const at = x(tick.value);
    const half = textWidth(tick.text, size) / 2;
    if (at - half < Math.max(0, free) || at + half > right) continue;
    free = at + half + size * 0.5;
    shapes.push({ kind: 'line', role: 'tick', x1: at, x2: at, y1: bottom, y2: bottom + 4 });
    shapes.push({ ...common, role: 'tick-text', x: at, anchor: 'middle', text: tick.text });
  }
  return shapes;
}

function headTexts(figures: ChartFigures, ground: ChartGround, name: string): Shape[] {
  const { metrics, x, right } = ground;
  const y = metrics.labelTextSize * 0.95;
  const shapes: Shape[] = [
    {
      kind: 'text',
      role: 'axis-text',
      x: 0,
      y,
      text: name,
      size: metrics.tickTextSize,
      anchor: 'start',
      weight: 'normal',
      turn: 0,
    },
  ];
  if (!figures.next) return shapes;
  const text = `next ${round(figures.next.dutyPct)} %`;
  const half = textWidth(text, metrics.labelTextSize) / 2;
  const first = textWidth(name, metrics.tickTextSize) + metrics.tickTextSize + half;
  const at = Math.max(first, Math.min(right - half, x(figures.next.dutyPct)));
  const common = { kind: 'text', y, anchor: 'middle', weight: 'normal', turn: 0 } as const;
  return [...shapes, { ...common, role: 'next-text', x: at, text, size: metrics.labelTextSize }];
}

function round(pct: number): string {
  return String(Math.round(pct * 100) / 100);
}
