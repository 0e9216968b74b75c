import { localQuadratic } from '../filter/local-quadratic.js';
import { firstIndexFrom } from '../filter/series.js';
import type { PullData } from './pull-data.js';

/** The peak of a pull and how well it is known. */
export interface PeakMeasure {
  readonly peakKpa: number;
  readonly peakTimeS: number;
  readonly rawPeakKpa: number;
  /** Standard uncertainty, kPa. */
  readonly uncertaintyKpa: number;
}

const MAX_SHIFT_STEPS = 0.5;

/**
 * Highest filtered boost of a pull, at the top of the local parabola where that lies between samples,
 * and the highest sample beside it. Uncertainty: noise left by the filter, step of the logged figures
 * (rectangular law), and what a parabola of this curvature hides between two samples.
 *
 * Source: JCGM 100 (GUM), sections 4.3 and 5.1, for adding them; interval error of a sampled parabola, y''·Δt²/8.
 */
export function measurePeak(data: PullData): PeakMeasure {
  const { boost, lead } = data;
  const first = firstIndexFrom(lead.smooth.timeS, data.span.startS);
  const top = boost.values.reduce(
    (best, value, index) => (value > (boost.values[best] as number) ? index : best),
    0,
  );
  const topS = boost.timeS[top] as number;
  const fit = localQuadratic(lead.despiked, topS, lead.window);
  const isTop = fit.curvaturePerS2 < 0;
  const shiftS = isTop ? -fit.slopePerS / fit.curvaturePerS2 : 0;
  const peakTimeS = Math.abs(shiftS) <= MAX_SHIFT_STEPS * lead.stepS ? clampTime(data, topS + shiftS) : topS;
  const gain = (fit.slopePerS + (fit.curvaturePerS2 * (peakTimeS - topS)) / 2) * (peakTimeS - topS);
  const rawValues = lead.raw.values.subarray(first);
  return {
    peakKpa: (boost.values[top] as number) + Math.max(gain, 0),
    peakTimeS,
    rawPeakKpa: rawValues.reduce((highest, value) => Math.max(highest, value), -Infinity),
    uncertaintyKpa: Math.hypot(
      lead.smoothNoiseKpa[first + top] ?? lead.noiseKpa,
      resolutionOf(rawValues) / Math.sqrt(12),
      (Math.abs(fit.curvaturePerS2) * lead.stepS ** 2) / 8,
    ),
  };
}

function clampTime(data: PullData, timeS: number): number {
  return Math.min(Math.max(timeS, data.span.startS), data.span.endS);
}

/** Smallest step between different logged values: the resolution of the figures. */
export function resolutionOf(values: Float64Array): number {
  const sorted = values.slice().sort();
  let smallest = Infinity;
  for (let index = 1; index < sorted.length; index += 1) {
    const step = (sorted[index] as number) - (sorted[index - 1] as number);
    if (step > 1e-6 && step < smallest) smallest = step;
  }
  return Number.isFinite(smallest) ? smallest : 0;
}
