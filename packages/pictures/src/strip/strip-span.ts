import type { Span } from '../figures/linear-scale.js';
import { spanOf } from '../figures/span-of.js';
import type { StripFigures } from './strip-figures.js';

/** No strip spans less, kPa: else two pulls 0.1 kPa apart would look like trouble. */
const LEAST_SPAN_KPA = 20;
/** Where nothing is known below the target, the scale begins at this share of it. */
const SHARE_BELOW_TARGET = 0.4;
/** The room past the wall, as a share of the ceiling, so that the wall is seen to have a far side. */
const SHARE_PAST_CEILING = 0.02;

/** The stretch of boost that a strip shows; 0 to 100 kPa where nothing is known yet. */
export function stripSpan(figures: StripFigures): Span {
  const { baseKpa, targetKpa, toleranceKpa, ceilingKpa, pulls, next } = figures;
  const values = pulls.map((pull) => pull.peakKpa);
  if (baseKpa !== null) values.push(baseKpa);
  if (next) values.push(next.lowKpa, next.highKpa);
  const isLowEndKnown = values.length > 0;
  if (targetKpa !== null) values.push(targetKpa, targetKpa - toleranceKpa, targetKpa + toleranceKpa);
  if (ceilingKpa !== null) values.push(ceilingKpa, ceilingKpa + Math.abs(ceilingKpa) * SHARE_PAST_CEILING);
  const goal = targetKpa ?? ceilingKpa;
  if (!isLowEndKnown && goal !== null) values.push(goal * SHARE_BELOW_TARGET);
  const finite = values.filter((value) => Number.isFinite(value));
  if (finite.length === 0) return { low: 0, high: 100 };
  return spanOf(finite, LEAST_SPAN_KPA);
}
