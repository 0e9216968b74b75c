import { NotDrawableError } from '../errors.js';
import { hatch } from '../figures/hatch.js';
import { linearScale, type Scale, type Span } from '../figures/linear-scale.js';
import type { PressureFormat } from '../figures/pressure-format.js';
import { pressureTicks } from '../figures/pressure-ticks.js';
import { requireFigure } from '../figures/require-figure.js';
import type { Picture, Shape } from '../figures/shapes.js';
import { textWidth } from '../figures/text-width.js';
import { describeStrip } from './describe-strip.js';
import type { StripFigures, StripSize } from './strip-figures.js';
import { stripLabels } from './strip-labels.js';
import { placeMarks, type MarkRoom, type PlacedMark } from './strip-marks.js';
import { stripHeight, stripMetrics, wireY } from './strip-metrics.js';
import { stripSpan } from './strip-span.js';
import { stripTable } from './strip-table.js';

const LEAST_WIDTH = 120;
/** One figure along the scale per so many times its own height. */
const TICK_SPACING = 6;

/** The strip's room and its scale: what every part of it is drawn with. */
interface Ground extends MarkRoom {
  readonly span: Span;
  readonly scale: Scale;
  readonly wire: number;
}

/**
 * The peak strip of one preset: a wire of boost on which every pull is threaded at its recorded peak, the tolerance
 * band a hatched block around the target, the ceiling a wall, the next pull's expected range an open bar, void
 * pulls hollow, pulls past the ceiling square. The same on a board card, on a screen and on paper.
 *
 * @param figures kPa gauge; whatever is null is left out and said to be missing
 * @param size form and width; the height follows from the form
 * @param format the person's unit
 * @returns shapes back to front, text alternative and table
 * @throws NotDrawableError for a figure that is not finite, a negative tolerance, a range upside down, a width
 * under 120
 */
export function layoutPeakStrip(figures: StripFigures, size: StripSize, format: PressureFormat): Picture {
  checkStrip(figures, size);
  const metrics = stripMetrics(size.form);
  const span = stripSpan(figures);
  const { inset } = metrics;
  const ground: Ground = {
    metrics,
    span,
    left: inset,
    right: size.width - inset,
    scale: linearScale(span, inset, size.width - inset),
    wire: wireY(metrics),
  };
  return {
    width: size.width,
    height: stripHeight(metrics),
    shapes: [
      ...goalShapes(figures, ground),
      ...scaleShapes(ground, format),
      ...nextShapes(figures, ground),
      ...placeMarks(figures, ground.scale, ground).flatMap((mark) => markShapes(mark, ground)),
      ...stripLabels(figures, format, ground.scale, { ...ground, form: size.form }),
    ],
    description: describeStrip(figures, format),
    table: stripTable(figures, format),
  };
}

function checkStrip(figures: StripFigures, size: StripSize): void {
  requireFigure('width', size.width, LEAST_WIDTH);
  requireFigure('baseKpa', figures.baseKpa);
  requireFigure('targetKpa', figures.targetKpa);
  requireFigure('toleranceKpa', figures.toleranceKpa, 0);
  requireFigure('ceilingKpa', figures.ceilingKpa);
  figures.pulls.forEach((pull, index) => requireFigure(`pulls[${index}].peakKpa`, pull.peakKpa));
  if (!figures.next) return;
  requireFigure('next.lowKpa', figures.next.lowKpa);
  requireFigure('next.highKpa', figures.next.highKpa);
  if (figures.next.highKpa < figures.next.lowKpa) {
    throw new NotDrawableError('next.highKpa', figures.next.highKpa, `at least ${figures.next.lowKpa}`);
  }
}

function goalShapes(figures: StripFigures, ground: Ground): Shape[] {
  const { scale, metrics, wire, right } = ground;
  const top = metrics.labelRow;
  const shapes: Shape[] = [];
  if (figures.targetKpa !== null) {
    const from = Math.max(ground.left, scale(figures.targetKpa - figures.toleranceKpa));
    const to = Math.min(right, scale(figures.targetKpa + figures.toleranceKpa));
    const box = { x: from, y: top + 1, width: Math.max(1, to - from), height: wire + metrics.foot - 3 - top };
    shapes.push(
      { kind: 'rect', role: 'band', ...box, cornerRadius: 0 },
      hatch(box, metrics.markRadius * 0.75),
    );
    const x = scale(figures.targetKpa);
    shapes.push({ kind: 'line', role: 'target', x1: x, x2: x, y1: box.y, y2: box.y + box.height });
  }
  if (figures.ceilingKpa !== null) {
    const x = scale(figures.ceilingKpa);
    const [y, bottom] = [top, wire + metrics.foot];
    const box = { x, y: y + 1, width: right - x, height: bottom - y - 2 };
    shapes.push({ kind: 'rect', role: 'beyond', ...box, cornerRadius: 0 });
    shapes.push({ kind: 'line', role: 'wall', x1: x, x2: x, y1: y - 1, y2: bottom });
  }
  return shapes;
}

function scaleShapes(ground: Ground, format: PressureFormat): Shape[] {
  const { metrics, left, right, wire, scale, span } = ground;
  const shapes: Shape[] = [{ kind: 'line', role: 'axis', x1: left, x2: right, y1: wire, y2: wire }];
  const size = metrics.tickTextSize;
  if (size === 0) return shapes;
  const y = wire + metrics.foot + metrics.tickRow - size * 0.35;
  const common = { kind: 'text', y, size, weight: 'normal', turn: 0 } as const;
  shapes.push({ ...common, role: 'axis-text', x: right, anchor: 'end', text: format.unit });
  let free = left;
  const end = right - textWidth(format.unit, size) - size;
  for (const tick of pressureTicks(span, format, Math.max(1, (right - left) / (size * TICK_SPACING)))) {
    const x = scale(tick.kpa);
    const half = textWidth(tick.text, size) / 2;
    if (x - half < free || x + half > end) continue;
    free = x + half + size;
    const y1 = wire + metrics.foot - 4;
    shapes.push({ kind: 'line', role: 'tick', x1: x, x2: x, y1, y2: y1 + 5 });
    shapes.push({ ...common, role: 'tick-text', x, anchor: 'middle', text: tick.text });
  }
  return shapes;
}

function nextShapes(figures: StripFigures, ground: Ground): Shape[] {
  const { metrics, wire, scale, left, right } = ground;
  const shapes: Shape[] = [];
  if (figures.baseKpa !== null) {
    const x = scale(figures.baseKpa);
    const reach = metrics.markRadius * 0.8;
    shapes.push({ kind: 'line', role: 'base', x1: x, x2: x, y1: wire - reach, y2: wire + reach });
  }
  if (!figures.next) return shapes;
  const half = metrics.markRadius + 2;
  const from = Math.max(left, Math.min(right - 4, scale(figures.next.lowKpa)));
  const width = Math.max(4, Math.min(right, scale(figures.next.highKpa)) - from);
  const box = { x: from, y: wire - half, width, height: half * 2, cornerRadius: Math.min(3, width / 2) };
  shapes.push({ kind: 'rect', role: 'next', ...box });
  return shapes;
}

function markShapes(mark: PlacedMark, { metrics, wire }: Ground): Shape[] {
  const y = wire - mark.lane * metrics.lanePitch;
  const r = metrics.markRadius;
  const isDot = mark.sort !== 'over' && mark.halfWidth <= r;
  const pill = { x: mark.centreX - mark.halfWidth, y: y - r, width: mark.halfWidth * 2, height: r * 2 };
  const body: Shape = isDot
    ? { kind: 'circle', role: mark.sort, cx: mark.centreX, cy: y, r }
    : { kind: 'rect', role: mark.sort, ...pill, cornerRadius: mark.sort === 'over' ? 1 : r };
  if (mark.text === '') return [body];
  const size = metrics.markTextSize;
  const text = { x: mark.centreX, y: y + size * 0.35, text: mark.text, size, anchor: 'middle' } as const;
  return [body, { kind: 'text', role: `${mark.sort}-text`, ...text, weight: 'bold', turn: 0 }];
}
