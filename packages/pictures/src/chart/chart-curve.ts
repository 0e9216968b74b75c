import { clipLine, clipPolygon, type Point } from '../figures/clip-polygon.js';
import type { PathShape } from '../figures/shapes.js';
import type { ChartFigures } from './chart-figures.js';
import type { ChartGround } from './chart-ground.js';

/** The predicted response: its 95 % range as an area, its median as a line; cut at the edges of the plot. */
export function chartCurve({ curve }: ChartFigures, ground: ChartGround): readonly PathShape[] {
  const { x, y, top, bottom } = ground;
  const upper = curve.map((point) => ({ x: x(point.duty), y: y(point.highKpa) }));
  const lower = curve.map((point) => ({ x: x(point.duty), y: y(point.lowKpa) })).reverse();
  const median = curve.map((point) => ({ x: x(point.duty), y: y(point.medianKpa) }));
  const area = clipPolygon([...upper, ...lower], top, bottom);
  const shapes: PathShape[] = [];
  if (area.length > 2) shapes.push({ kind: 'path', role: 'curve-band', d: `${pathOf(area)}Z` });
  const line = clipLine(median, top, bottom).map(pathOf).join('');
  if (line !== '') shapes.push({ kind: 'path', role: 'curve', d: line });
  return shapes;
}

function pathOf(points: readonly Point[]): string {
  return points
    .map((point, index) => `${index === 0 ? 'M' : 'L'}${round(point.x)} ${round(point.y)}`)
    .join('');
}

function round(value: number): string {
  return String(Math.round(value * 100) / 100);
}
