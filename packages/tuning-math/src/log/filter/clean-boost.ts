import type { PullSettings } from '../pull-settings.js';
import { hampelFilter, median } from './hampel-filter.js';
import { smoothSeries, type LocalWindow } from './local-quadratic.js';
import type { Series } from './series.js';

/** Boost of one pull through the documented filter. */
export interface CleanBoost {
  /** As logged, repeated samples of a slower sensor left out. */
  readonly raw: Series;
  /** Spikes replaced. */
  readonly despiked: Series;
  readonly smooth: Series;
  readonly window: LocalWindow;
  readonly spikeCount: number;
  /** Standard deviation of the noise of one sample, kPa. */
  readonly noiseKpa: number;
  /** Standard deviation of the noise left in the smooth boost, by sample, kPa. */
  readonly smoothNoiseKpa: Float64Array;
  /** Median interval between samples, s. */
  readonly stepS: number;
}

const LEAST_SIDE_SAMPLES = 2;
const LEAST_SPIKE_KPA = 4;
const MAD_SCALE = 1.482602218505602;

/**
 * The documented filter: repeated samples of a slower sensor are left out, spikes found by the Hampel
 * identifier are replaced, then each moment gets the value of the parabola fitted to the samples about it.
 *
 * @param raw boost samples of a pull, at least one
 * Source: see hampelFilter and localQuadratic.
 */
export function cleanBoost(raw: Series, settings: PullSettings): CleanBoost {
  const fresh = withoutHolds(raw);
  const hampel = hampelFilter(fresh, {
    halfWindowS: settings.hampelHalfWindowS,
    leastSideSamples: LEAST_SIDE_SAMPLES,
    threshold: settings.hampelThreshold,
    leastDistance: LEAST_SPIKE_KPA,
  });
  const despiked = { timeS: fresh.timeS, values: hampel.values };
  const window = { halfWindowS: settings.smoothWindowS / 2, leastSamples: settings.smoothLeastSamples };
  const smooth = smoothSeries(despiked, window);
  const noiseKpa = noiseOf(despiked.values, smooth);
  return {
    raw: fresh,
    despiked,
    smooth: { timeS: fresh.timeS, values: smooth.values },
    window,
    spikeCount: hampel.spikeIndexes.length,
    noiseKpa,
    smoothNoiseKpa: smooth.varianceGains.map((gain) => noiseKpa * Math.sqrt(gain)),
    stepS: medianGap(fresh.timeS),
  };
}

const LEAST_FLAT_RUN = 4;

/**
 * Robust spread of what the smoothing took away, corrected for the share of noise that it left in. Runs of
 * equal samples show no noise (a clipped or stuck sensor) and do not count.
 */
function noiseOf(
  values: Float64Array,
  smooth: { values: Float64Array; varianceGains: Float64Array },
): number {
  const residuals: number[] = [];
  let run = 1;
  for (let index = 1; index < values.length; index += 1) {
    run = values[index] === values[index - 1] ? run + 1 : 1;
    if (run === LEAST_FLAT_RUN) residuals.splice(-(LEAST_FLAT_RUN - 2));
    if (run >= LEAST_FLAT_RUN) continue;
    const gain = Math.min(smooth.varianceGains[index] as number, 0.9);
    residuals.push(
      Math.abs((values[index] as number) - (smooth.values[index] as number)) / Math.sqrt(1 - gain),
    );
  }
  return MAD_SCALE * (median(Float64Array.from(residuals)) || 0);
}

/**
 * A sensor slower than the rows shows each sample several times. The usual length of such runs while
 * boost moves is the ratio of the rates; repeats up to it are left out, longer runs are a real plateau or
 * a stuck sensor and keep one sample each such length.
 */
function withoutHolds(raw: Series): Series {
  const hold = usualHold(raw.values);
  if (hold < 2) return raw;
  const kept: number[] = [];
  let last = -Infinity;
  raw.values.forEach((value, index) => {
    const isRepeat = index > 0 && value === raw.values[index - 1];
    if (isRepeat && index - last < hold) return;
    kept.push(index);
    last = index;
  });
  return {
    timeS: Float64Array.from(kept, (index) => raw.timeS[index] as number),
    values: Float64Array.from(kept, (index) => raw.values[index] as number),
  };
}

const LEAST_RUNS = 5;

/** Median length of runs of equal samples, over the steepest half of the changes; 1 where samples are fresh. */
function usualHold(values: Float64Array): number {
  const runs: { length: number; jump: number }[] = [];
  let start = 0;
  for (let index = 1; index < values.length; index += 1) {
    if (values[index] === values[index - 1]) continue;
    runs.push({
      length: index - start,
      jump: Math.abs((values[index] as number) - (values[index - 1] as number)),
    });
    start = index;
  }
  // The first run began before the pull, so its length is unknown.
  const whole = runs.slice(1);
  if (whole.length < LEAST_RUNS) return 1;
  const steep = whole.sort((a, b) => b.jump - a.jump).slice(0, Math.ceil(whole.length / 2));
  const lengths = Float64Array.from(steep, (run) => run.length);
  const usual = median(lengths);
  const most = steep.filter((run) => Math.abs(run.length - usual) <= 1).length;
  return most >= 0.8 * steep.length ? Math.round(usual) : 1;
}

export function medianGap(timeS: Float64Array): number {
  return median(timeS.slice(1).map((time, index) => time - (timeS[index] as number))) || 0;
}
