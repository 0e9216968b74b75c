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

/**
 * Peak of a pull: the top of the filtered boost, and the highest sample beside it. The filter is a parabola
 * over the documented window; where wider windows agree with it within the noise the widest of them
 * stands in, so that a plateau is averaged and a sharp overshoot is not flattened. Uncertainty: noise left
 * by that window, half of what the windows differ by, the step of the logged figures (rectangular law),
 * and what a sensor of the usual lag takes off a top this sharp.
 *
 * Source: intersection of confidence intervals, Goldenshluger & Nemirovski, Math. Methods of Statistics 6
 * (1997) 135-170; JCGM 100 (GUM), sections 4.3 and 5.1, for adding uncertainties; lag of a first-order
 * sensor at the top of a parabola, |y''|·T²/2.
 */
export function measurePeak(data: PullData): PeakMeasure {
  const { boost, lead } = data;
  const first = firstIndexFrom(lead.smooth.timeS, data.span.startS);
  const top = boost.values.reduce(
    (best, value, index) => (value > (boost.values[best] as number) ? index : best),
    0,
  );
  const fit = widestAgreeing(data, boost.timeS[top] as number);
  const rawValues = lead.raw.values.subarray(first);
  return {
    peakKpa: fit.topKpa,
    peakTimeS: Math.min(Math.max(fit.topS, data.span.startS), data.span.endS),
    rawPeakKpa: rawValues.reduce((highest, value) => Math.max(highest, value), -Infinity),
    uncertaintyKpa: Math.hypot(
      data.airUncertaintyKpa,
      fit.noiseKpa,
      fit.spreadKpa / 2,
      resolutionOf(rawValues) / Math.sqrt(12),
      (Math.abs(fit.curvaturePerS2) * SENSOR_LAG_S ** 2) / 2,
    ),
  };
}

/** Usual lag of a workshop's pressure sensor and hose: common practice, no source. */
const SENSOR_LAG_S = 0.015;
/** Half windows as multiples of the documented one. */
const WINDOW_MULTIPLES = [1, 1.5, 2.2, 3.2];
const LEAST_SAMPLES = 3;
const AGREE_DEVIATIONS = 1.5;

interface PeakFit {
  readonly topKpa: number;
  readonly topS: number;
  readonly noiseKpa: number;
  readonly curvaturePerS2: number;
  /** Between the documented window and the chosen one. */
  readonly spreadKpa: number;
}

function widestAgreeing(data: PullData, atS: number): PeakFit {
  const fits = WINDOW_MULTIPLES.map((multiple) => peakFit(data, atS, multiple));
  const [documented] = fits;
  let [low, high] = [-Infinity, Infinity];
  let chosen = documented as PeakFit;
  for (const fit of fits) {
    low = Math.max(low, fit.topKpa - AGREE_DEVIATIONS * fit.noiseKpa);
    high = Math.min(high, fit.topKpa + AGREE_DEVIATIONS * fit.noiseKpa);
    if (low > high) break;
    chosen = fit;
  }
  return { ...chosen, spreadKpa: Math.abs(chosen.topKpa - (documented as PeakFit).topKpa) };
}

/** The parabola about a sample, at its own top where that lies within half a sample interval. */
function peakFit({ lead }: PullData, atS: number, multiple: number): PeakFit {
  const window = { halfWindowS: multiple * lead.window.halfWindowS, leastSamples: LEAST_SAMPLES };
  const fit = localQuadratic(lead.despiked, atS, window);
  const shiftS = fit.curvaturePerS2 < 0 ? -fit.slopePerS / fit.curvaturePerS2 : 0;
  const near = Math.abs(shiftS) <= lead.stepS / 2 ? shiftS : 0;
  return {
    topKpa: fit.value + (fit.slopePerS * near) / 2,
    topS: atS + near,
    noiseKpa: Math.max(lead.noiseKpa, LEAST_NOISE_KPA) * Math.sqrt(fit.varianceGain),
    curvaturePerS2: fit.curvaturePerS2,
    spreadKpa: 0,
  };
}

/** Floor for logs without visible noise, so that rounding does not pick the window. */
const LEAST_NOISE_KPA = 0.02;

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
