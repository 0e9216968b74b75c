import { linearScale, type Scale, type Span } from '../figures/linear-scale.js';
import type { Shape } from '../figures/shapes.js';
import { spanOf } from '../figures/span-of.js';
import { textWidth } from '../figures/text-width.js';
import { tidyTicks } from '../figures/tidy-ticks.js';
import type { MapFigures, MapSize, MapSpot } from './map-figures.js';

/** No map spans less. */
const LEAST_FLOW_SPAN = 0.02;
const LEAST_RATIO_SPAN = 0.4;
export const TEXT_SIZE = 13;

/** Plot area and scales of a map. */
export interface MapGround {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly flowSpan: Span;
  readonly ratioSpan: Span;
  readonly x: Scale;
  readonly y: Scale;
}

/** Lays out scales so that all lines and pulls find room. */
export function mapGround({ lines, goals, pulls }: MapFigures, { width, height }: MapSize): MapGround {
  const spots: readonly MapSpot[] = [...lines, ...goals, ...pulls].flatMap((one) => one.spots);
  const flowSpan = spanOf([0, ...spots.map(({ flowKgPerS }) => flowKgPerS)], LEAST_FLOW_SPAN);
  const ratioSpan = spanOf([1, ...spots.map(({ pressureRatio }) => pressureRatio)], LEAST_RATIO_SPAN);
  const [left, right] = [38, width - 12];
  const [top, bottom] = [TEXT_SIZE * 2, height - TEXT_SIZE * 3];
  return {
    ...{ left, right, top, bottom, ratioSpan },
    flowSpan: { low: 0, high: flowSpan.high },
    x: linearScale({ low: 0, high: flowSpan.high }, left, right),
    y: linearScale(ratioSpan, bottom, top),
  };
}

const common = { kind: 'text', size: TEXT_SIZE, weight: 'normal', turn: 0 } as const;

/** Grid, axes, their figures and names. */
export function mapAxes({
  left,
  right,
  top,
  bottom,
  flowSpan,
  ratioSpan,
  x,
  y,
}: MapGround): readonly Shape[] {
  const ratios = tidyTicks(ratioSpan, Math.max(2, (bottom - top) / 44));
  const flows = tidyTicks(flowSpan, Math.max(2, (right - left) / 74));
  const [flowName, ratioName] = ['corrected flow, kg/s', 'pressure ratio'];
  return [
    ...ratios.flatMap(({ value, text }): Shape[] => [
      { kind: 'line', role: 'grid', x1: left, x2: right, y1: y(value), y2: y(value) },
      { ...common, role: 'tick-text', x: left - 6, y: y(value) + TEXT_SIZE * 0.35, text, anchor: 'end' },
    ]),
    ...flows.flatMap(({ value, text }): Shape[] => [
      { kind: 'line', role: 'tick', x1: x(value), x2: x(value), y1: bottom, y2: bottom + 4 },
      ...(x(value) + textWidth(text, TEXT_SIZE) / 2 > right
        ? []
        : [
            {
              ...common,
              role: 'tick-text',
              x: x(value),
              y: bottom + TEXT_SIZE * 1.4,
              text,
              anchor: 'middle',
            } as const,
          ]),
    ]),
    { kind: 'line', role: 'axis', x1: left, x2: right, y1: bottom, y2: bottom },
    { ...common, role: 'axis-text', x: 0, y: TEXT_SIZE, text: ratioName, anchor: 'start' },
    { ...common, role: 'axis-text', x: right, y: bottom + TEXT_SIZE * 2.8, text: flowName, anchor: 'end' },
  ];
}
