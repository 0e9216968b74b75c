import { requireFigure } from '../figures/require-figure.js';
import type { Picture } from '../figures/shapes.js';
import { describeMap, mapTable } from './describe-map.js';
import type { MapFigures, MapSize, MapSpot } from './map-figures.js';
import { mapAxes, mapGround } from './map-ground.js';
import { mapLabels } from './map-labels.js';
import { mapLines } from './map-lines.js';

const LEAST_WIDTH = 240;
const LEAST_HEIGHT = 200;

/**
 * A compressor map with what runs across it: corrected flow to the right, pressure ratio upwards; speed lines, the surge
 * line with shade beyond it, the choke line; the engine's line at each goal, and the way of each pull with its number at
 * the peak.
 *
 * @param figures flows in kg/s of the map's reference air, pressure ratios
 * @returns shapes back to front, text alternative and table
 * @throws NotDrawableError for a figure that is not finite, or a size under 240 by 200
 */
export function layoutCompressorMap(figures: MapFigures, size: MapSize): Picture {
  requireFigure('width', size.width, LEAST_WIDTH);
  requireFigure('height', size.height, LEAST_HEIGHT);
  checkSpots('lines', figures.lines);
  figures.lines.forEach(({ efficienciesPct }, index) =>
    efficienciesPct?.forEach((pct, place) =>
      requireFigure(`lines[${index}].efficienciesPct[${place}]`, pct, 0),
    ),
  );
  checkSpots('goals', figures.goals);
  checkSpots('pulls', figures.pulls);
  const ground = mapGround(figures, size);
  return {
    ...size,
    shapes: [...mapAxes(ground), ...mapLines(figures, ground), ...mapLabels(figures, ground)],
    description: describeMap(figures),
    table: mapTable(figures),
  };
}

function checkSpots(name: string, ones: readonly { readonly spots: readonly MapSpot[] }[]): void {
  ones.forEach(({ spots }, index) =>
    spots.forEach(({ flowKgPerS, pressureRatio }, place) => {
      requireFigure(`${name}[${index}].spots[${place}].flowKgPerS`, flowKgPerS, 0);
      requireFigure(`${name}[${index}].spots[${place}].pressureRatio`, pressureRatio, 0);
    }),
  );
}
