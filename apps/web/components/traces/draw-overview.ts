import type { TraceIndex } from '@pullbook/contracts';
import { lineShape, type LineShape } from './line-shape';
import { groundOf, pullMark } from './draw-pulls';
import type { TraceReader } from './trace-reader';
import type { TimeWindow } from './time-window';
import { withRoom } from './lane-scale';
import type { TraceTheme } from './trace-theme';

export interface Overview {
  readonly context: CanvasRenderingContext2D;
  readonly index: TraceIndex;
  readonly reader: TraceReader;
  readonly theme: TraceTheme;
  readonly width: number;
  readonly height: number;
  readonly window: TimeWindow;
}

/** The whole log as one strip of boost, its pulls, and a frame about what is looked at. */
export function drawOverview({ context, index, reader, theme, width, height, window }: Overview): void {
  context.fillStyle = theme.sheet;
  context.fillRect(0, 0, width, height);
  const all = { fromS: index.fromS, toS: Math.max(index.toS, index.fromS + 1e-3) };
  const x = (timeS: number): number => ((timeS - all.fromS) / (all.toS - all.fromS)) * width;
  for (const pull of index.pulls) {
    context.fillStyle = theme[groundOf[pullMark(pull)]];
    context.fillRect(x(pull.startS), 0, Math.max(2, x(pull.endS) - x(pull.startS)), height);
  }
  const facts = index.channels[0];
  const shape = lineShape(index, reader, 0, { window: all, widthPx: Math.round(width) });
  const span = withRoom([facts?.usualLow ?? 0, facts?.usualHigh ?? 1], facts?.unit ?? 'none');
  const y = (value: number): number => height - ((value - span.low) / (span.high - span.low)) * height;
  context.strokeStyle = theme['ink-soft'];
  context.lineWidth = 1.25;
  context.beginPath();
  if (shape !== null) strokeBoost(context, shape, x, y);
  context.stroke();
  drawFrame({ context, theme, height }, x(window.fromS), x(window.toS));
}

type Place = (value: number) => number;

function strokeBoost(context: CanvasRenderingContext2D, shape: LineShape, x: Place, y: Place): void {
  if (shape.kind === 'points') {
    shape.values.forEach((value, at) => {
      if (!Number.isNaN(value)) context.lineTo(x(shape.timesS[at] ?? 0), y(value));
    });
    return;
  }
  shape.lows.forEach((low, column) => {
    if (Number.isNaN(low)) return;
    context.moveTo(column + 0.5, y(shape.highs[column] as number) - 0.5);
    context.lineTo(column + 0.5, y(low) + 0.5);
  });
}

function drawFrame(
  { context, theme, height }: Pick<Overview, 'context' | 'theme' | 'height'>,
  from: number,
  to: number,
): void {
  const width = Math.max(6, to - from);
  context.strokeStyle = theme.petrol;
  context.lineWidth = 3;
  context.strokeRect(from + 1.5, 1.5, Math.max(3, width - 3), height - 3);
}
