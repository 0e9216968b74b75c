import { NotDrawableError } from '../errors.js';
import type { PressureFormat } from '../figures/pressure-format.js';
import { requireFigure } from '../figures/require-figure.js';
import type { Picture, Shape } from '../figures/shapes.js';
import { chartAxisTexts, chartGrid } from './chart-axes.js';
import { chartCurve } from './chart-curve.js';
import type { ChartFigures, ChartSize } from './chart-figures.js';
import { chartGoal, chartLevelTexts } from './chart-goal.js';
import { chartGround, type ChartGround } from './chart-ground.js';
import { chartMarks } from './chart-marks.js';
import { chartTable, describeChart } from './describe-chart.js';

const LEAST_WIDTH = 240;
const LEAST_HEIGHT = 180;

/**
 * The duty response of one preset: duty to the right, peak upwards; every pull a numbered mark, the predicted
 * response a line in its 95 % range, the tolerance band across, the ceiling a wall, the next pull an open bar.
 *
 * @param figures duty in %, pressures in kPa gauge; whatever is null or empty is left out
 * @param format the person's unit; ticks are round in it
 * @returns shapes back to front, text alternative and table
 * @throws NotDrawableError for a figure that is not finite, a range upside down, a size under 240 by 180
 */
export function layoutResponseChart(figures: ChartFigures, size: ChartSize, format: PressureFormat): Picture {
  checkSize(size);
  checkChart(figures);
  const ground = chartGround(figures, size, format);
  return {
    width: size.width,
    height: size.height,
    shapes: [
      ...chartGrid(ground),
      ...chartGoal(figures, ground),
      ...chartCurve(figures, ground),
      ...nextBar(figures, ground),
      ...chartMarks(figures, ground),
      ...chartAxisTexts(figures, ground, format),
      ...chartLevelTexts(figures, ground),
    ],
    description: describeChart(figures, format),
    table: chartTable(figures, format),
  };
}

function nextBar({ next }: ChartFigures, { x, y, top, bottom, metrics }: ChartGround): Shape[] {
  if (!next) return [];
  const half = metrics.markRadius + 2;
  const from = Math.max(top, Math.min(bottom - 4, y(next.highKpa)));
  const height = Math.max(4, Math.min(bottom, y(next.lowKpa)) - from);
  const box = { x: x(next.dutyPct) - half, y: from, width: half * 2, height };
  return [{ kind: 'rect', role: 'next', ...box, cornerRadius: Math.min(3, height / 2) }];
}

function checkSize(size: ChartSize): void {
  requireFigure('width', size.width, LEAST_WIDTH);
  requireFigure('height', size.height, LEAST_HEIGHT);
}

function checkChart(figures: ChartFigures): void {
  requireFigure('dutyRange.min', figures.dutyRange.min);
  requireFigure('dutyRange.max', figures.dutyRange.max, figures.dutyRange.min);
  requireFigure('baseKpa', figures.baseKpa);
  requireFigure('targetKpa', figures.targetKpa);
  requireFigure('toleranceKpa', figures.toleranceKpa, 0);
  requireFigure('ceilingKpa', figures.ceilingKpa);
  figures.pulls.forEach((pull, index) => {
    requireFigure(`pulls[${index}].dutyPct`, pull.dutyPct);
    requireFigure(`pulls[${index}].peakKpa`, pull.peakKpa);
  });
  figures.curve.forEach((point, index) => {
    requireFigure(`curve[${index}].duty`, point.duty, figures.curve[index - 1]?.duty);
    requireFigure(`curve[${index}].medianKpa`, point.medianKpa);
    requireFigure(`curve[${index}].lowKpa`, point.lowKpa);
    requireFigure(`curve[${index}].highKpa`, point.highKpa, point.lowKpa);
  });
  if (figures.next) checkNext(figures.next);
}

function checkNext(next: NonNullable<ChartFigures['next']>): void {
  requireFigure('next.dutyPct', next.dutyPct);
  requireFigure('next.lowKpa', next.lowKpa);
  requireFigure('next.highKpa', next.highKpa);
  if (next.highKpa < next.lowKpa) {
    throw new NotDrawableError('next.highKpa', next.highKpa, `at least ${next.lowKpa}`);
  }
}
