import { NotDrawableError } from '../errors.js';
import type { PressureFormat } from '../figures/pressure-format.js';
import { requireFigure } from '../figures/require-figure.js';
import type { Picture } from '../figures/shapes.js';
import { describeDrift, driftTable } from './describe-drift.js';
import type { DriftFigures } from './drift-figures.js';
import { driftGround } from './drift-ground.js';
import { driftLevels, driftTexts } from './drift-levels.js';
import { driftLimits, driftMarks } from './drift-marks.js';

const LEAST_WIDTH = 240;
const LEAST_HEIGHT = 180;

/**
 * Peaks of a preset over visits at reference conditions: the baseline's pale, later ones filled, between the limits of
 * single pulls (dashed) and with their moving average (line) between its own limits (dotted). A pull outside is
 * square, and a flag stands where a rule fired first.
 *
 * @param figures pressures in kPa gauge, pulls in order of time; at least one pull in the baseline
 * @param size px, at least 240 by 180
 * @param format the person's unit; ticks are round in it
 * @returns shapes back to front, text alternative and table
 * @throws NotDrawableError for a figure that is not finite, limits upside down, no baseline, too small a size
 */
export function layoutDriftChart(
  figures: DriftFigures,
  size: { readonly width: number; readonly height: number },
  format: PressureFormat,
): Picture {
  requireFigure('width', size.width, LEAST_WIDTH);
  requireFigure('height', size.height, LEAST_HEIGHT);
  checkDrift(figures);
  const ground = driftGround(figures, size, format);
  return {
    ...size,
    shapes: [
      ...driftLevels(figures, ground),
      ...driftLimits(figures, ground),
      ...driftMarks(figures, ground),
      ...driftTexts(ground, format.unit),
    ],
    description: describeDrift(figures, format),
    table: driftTable(figures, format),
  };
}

function checkDrift({ baseline, since, ...levels }: DriftFigures): void {
  requireFigure('centreKpa', levels.centreKpa);
  requireFigure('targetKpa', levels.targetKpa);
  requireFigure('toleranceKpa', levels.toleranceKpa, 0);
  requireFigure('ceilingKpa', levels.ceilingKpa);
  if (baseline.length === 0) throw new NotDrawableError('baseline.length', 0, 'at least 1');
  baseline.forEach(({ kpa }, index) => requireFigure(`baseline[${index}].kpa`, kpa));
  since.forEach((pull, index) => {
    const name = `since[${index}]`;
    requireFigure(`${name}.kpa`, pull.kpa);
    requireFigure(`${name}.lowKpa`, pull.lowKpa);
    requireFigure(`${name}.highKpa`, pull.highKpa, pull.lowKpa);
    requireFigure(`${name}.averageKpa`, pull.averageKpa);
    requireFigure(`${name}.averageLowKpa`, pull.averageLowKpa);
    requireFigure(`${name}.averageHighKpa`, pull.averageHighKpa, pull.averageLowKpa);
  });
}
