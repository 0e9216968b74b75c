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
 * Highest filtered boost of a pull, and the highest sample beside it. The moment of the peak is that of
 * the highest filtered sample; its height is the local parabola over the widest window that agrees with
 * all narrower ones within the noise, so that a sharp overshoot is not flattened and a plateau is averaged.
 * Uncertainty: noise left by that window, half of what the windows differ by, and the step of the logged
 * figures (rectangular law).
 *
 * Source: intersection of confidence intervals, Goldenshluger & Nemirovski, Math. Methods of Statistics 6
 * (1997) 135-170; JCGM 100 (GUM), sections 4.3 and 5.1, for adding uncertainties.
 */
export function measurePeak(data: PullData): PeakMeasure {
  const { boost, lead } = data;
  const first = firstIndexFrom(lead.smooth.timeS, data.span.startS);
  const top = boost.values.reduce(
    (best, value, index) => (value > (boost.values[best] as number) ? index : best),
    0,
  );
  const topS = boost.timeS[top] as number;
  const fit = widestAgreeing(data, topS);
  const rawValues = lead.raw.values.subarray(first);
  return {
    peakKpa: fit.value,
    peakTimeS: topS,
    rawPeakKpa: rawValues.reduce((highest, value) => Math.max(highest, value), -Infinity),
    uncertaintyKpa: Math.hypot(fit.noiseKpa, fit.spreadKpa / 2, resolutionOf(rawValues) / Math.sqrt(12)),
  };
}

/** Half windows as shares of the usual one; the narrowest holds at least three samples. */
const WINDOW_SHARES = [0.25, 0.5, 0.75, 1, 1.5, 2.2, 3.2];
const AGREE_DEVIATIONS = 1.5;

interface PeakFit {
  readonly value: number;
  readonly noiseKpa: number;
  /** Between the narrowest window and the chosen one. */
  readonly spreadKpa: number;
}

function widestAgreeing({ lead }: PullData, atS: number): PeakFit {
  const noise = Math.max(lead.noiseKpa, LEAST_NOISE_KPA);
  const fits = WINDOW_SHARES.map((share) => {
    const fit = localQuadratic(lead.despiked, atS, {
      halfWindowS: share * lead.window.halfWindowS,
      leastSamples: 3,
    });
    return { value: fit.value, noiseKpa: noise * Math.sqrt(fit.varianceGain) };
  });
  let [low, high] = [-Infinity, Infinity];
  let chosen = fits[0] ?? { value: 0, noiseKpa: noise };
  for (const fit of fits) {
    low = Math.max(low, fit.value - AGREE_DEVIATIONS * fit.noiseKpa);
    high = Math.min(high, fit.value + AGREE_DEVIATIONS * fit.noiseKpa);
    if (low > high) break;
    chosen = fit;
  }
  return { ...chosen, spreadKpa: Math.abs(chosen.value - (fits[0]?.value ?? chosen.value)) };
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
