import { drawTraces } from './draw-traces';
import { lanesOf } from './lanes-of';
import { layOut, type TraceLayout } from './lay-out';
import type { PersonUnits } from './scene';
import type { TraceTheme } from './trace-theme';
import type { TraceSight, TraceView } from './trace-view';

/** What a picture is painted with. */
export interface Paint {
  readonly view: TraceView;
  readonly sight: TraceSight;
  readonly theme: TraceTheme;
  readonly units: PersonUnits;
  /** Width of the picture, px. */
  readonly width: number;
  /** Height that is free for it, px; 0 where that does not matter. */
  readonly roomPx: number;
  /** Pixels of the canvas for each px. */
  readonly scale: number;
}

/** Paints the traces onto a canvas, which becomes as high as they need. @returns where everything stands */
export function paintTraces(canvas: HTMLCanvasElement, paint: Paint, headPx = 0): TraceLayout | null {
  const context = canvas.getContext('2d', { alpha: false });
  if (context === null) return null;
  const { view, sight, theme, units, width, scale, roomPx } = paint;
  const { index, reader } = view;
  const layout = layOut(lanesOf(index, sight.state), width, roomPx);
  sizeCanvas(canvas, width * scale, (layout.height + headPx) * scale);
  context.setTransform(scale, 0, 0, scale, 0, headPx * scale);
  drawTraces({ context, index, reader, state: sight.state, layout, theme, units, onsets: sight.onsets });
  return layout;
}

/** A canvas is cleared when its size is set, so it is set only when it changes. */
export function sizeCanvas(canvas: HTMLCanvasElement, widthPx: number, heightPx: number): void {
  const [width, height] = [Math.round(widthPx), Math.round(heightPx)];
  if (canvas.width !== width) canvas.width = width;
  if (canvas.height !== height) canvas.height = height;
}
