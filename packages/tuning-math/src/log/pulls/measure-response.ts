import { localQuadratic } from '../filter/local-quadratic.js';
import { partOf, valueAt, type Series } from '../filter/series.js';
import type { LogNotice } from '../log-notice.js';
import type { PullSettings } from '../pull-settings.js';
import { firstReachS } from './first-reach.js';
import { measureSettled, type SettledBoostMean } from './measure-settled.js';
import type { PeakMeasure } from './measure-peak.js';
import type { PullData } from './pull-data.js';

/** How boost comes on and where it settles; null where the pull does not tell, with the reason. */
export interface ResponseMeasure {
  readonly settled: SettledBoostMean | null;
  readonly settledUncertaintyKpa: number | null;
  readonly overshootPct: number | null;
  readonly overshootUncertaintyPct: number | null;
  readonly riseTimeS: number | null;
  readonly riseUncertaintyS: number | null;
  readonly onsetRpm: number | null;
  readonly onsetUncertaintyRpm: number | null;
  readonly onsetBasis: 'target' | 'settled' | null;
  readonly notes: readonly LogNotice[];
}

const SPEED_WINDOW = { halfWindowS: 0.15, leastSamples: 5 };

/**
 * Settled boost, overshoot relative to it, rise time from 10 % to 90 % of it, and the engine speed at
 * which 90 % of the target (without a target: of settled boost) is first reached; the shares are settings.
 *
 * Source: reference levels and words of IEEE 181; here they are shares of settled gauge boost, that is of
 * a rise from zero, not of the swing from the boost before the pull. Uncertainties: JCGM 100, section 5.1.
 */
export function measureResponse(
  data: PullData,
  peak: PeakMeasure,
  targetKpa: number | null,
  settings: PullSettings,
): ResponseMeasure {
  const noiseKpa = data.lead.noiseKpa;
  const leastBandKpa = 2 * meanOf(data.lead.smoothNoiseKpa);
  const bandShare = settings.settledBandPct / 100;
  const bandKpa = (levelKpa: number): number => Math.max(bandShare * Math.abs(levelKpa), leastBandKpa);
  const settled = measureSettled(data.boost, peak.peakKpa, bandKpa, settings.settledWindowS);
  const settledUncertaintyKpa =
    settled === null ? null : Math.hypot(data.airUncertaintyKpa, noiseKpa / Math.sqrt(settled.sampleCount));
  const rise = settled === null ? null : riseOf(data, settled.settledKpa, settings);
  const onset = onsetOf(data, settled, { targetKpa, share: settings.onsetPct / 100 });
  return {
    settled,
    settledUncertaintyKpa,
    ...overshootOf(peak, settled, settledUncertaintyKpa),
    riseTimeS: rise?.riseTimeS ?? null,
    riseUncertaintyS: rise?.uncertaintyS ?? null,
    ...onset.figures,
    notes: [...settledNote(settled), ...(rise?.notes ?? []), ...onset.notes],
  };
}

function overshootOf(
  peak: PeakMeasure,
  settled: SettledBoostMean | null,
  settledUncertaintyKpa: number | null,
): { overshootPct: number | null; overshootUncertaintyPct: number | null } {
  if (settled === null || !(settled.settledKpa > 0))
    return { overshootPct: null, overshootUncertaintyPct: null };
  const ratio = peak.peakKpa / settled.settledKpa;
  return {
    overshootPct: 100 * (ratio - 1),
    overshootUncertaintyPct:
      (100 * Math.hypot(peak.uncertaintyKpa, ratio * (settledUncertaintyKpa ?? 0))) / settled.settledKpa,
  };
}

function settledNote(settled: SettledBoostMean | null): LogNotice[] {
  if (settled !== null) return [];
  return [
    {
      code: 'not-settled',
      text: 'boost does not settle before the pull ends: no settled boost, overshoot or rise time',
    },
  ];
}

function riseOf(
  data: PullData,
  settledKpa: number,
  settings: PullSettings,
): { riseTimeS: number | null; uncertaintyS: number | null; notes: LogNotice[] } {
  const lowS = firstReachS(data.lead.smooth, (settings.riseLowPct / 100) * settledKpa);
  const highS = firstReachS(data.lead.smooth, (settings.riseHighPct / 100) * settledKpa);
  if (lowS === null || highS === null || !(settledKpa > 0)) {
    const text = `boost is above ${settings.riseLowPct} % of its settled value before the pull starts: no rise time`;
    return { riseTimeS: null, uncertaintyS: null, notes: [{ code: 'no-rise-seen', text }] };
  }
  const uncertaintyS = Math.hypot(crossingUncertaintyS(data, lowS), crossingUncertaintyS(data, highS));
  return { riseTimeS: highS - lowS, uncertaintyS, notes: [] };
}

/** Noise over slope, and the clock's resolution of one interval (rectangular law). */
function crossingUncertaintyS(data: PullData, atS: number): number {
  const fit = localQuadratic(data.lead.despiked, atS, data.lead.window);
  const noiseS = (data.lead.noiseKpa * Math.sqrt(fit.varianceGain)) / Math.max(Math.abs(fit.slopePerS), 1);
  return Math.hypot(noiseS, data.lead.stepS / Math.sqrt(12));
}

type OnsetFigures = Pick<ResponseMeasure, 'onsetRpm' | 'onsetUncertaintyRpm' | 'onsetBasis'>;
const NO_ONSET: OnsetFigures = { onsetRpm: null, onsetUncertaintyRpm: null, onsetBasis: null };

function onsetOf(
  data: PullData,
  settled: SettledBoostMean | null,
  { targetKpa, share }: { targetKpa: number | null; share: number },
): { figures: OnsetFigures; notes: LogNotice[] } {
  const levelKpa = targetKpa ?? settled?.settledKpa ?? null;
  if (levelKpa === null) return { figures: NO_ONSET, notes: [] };
  if (data.engine.values.length < 2) return { figures: NO_ONSET, notes: [] };
  const atS = firstReachS(data.lead.smooth, share * levelKpa);
  if (atS === null || atS < data.span.startS) {
    const text =
      targetKpa === null
        ? 'boost is up before the pull starts: no onset speed'
        : `${percentOf(share)} % of target is not reached in this pull: no onset speed`;
    return { figures: NO_ONSET, notes: [{ code: 'no-onset', text }] };
  }
  const rpm = speedAt(data.engine, atS);
  return {
    figures: {
      onsetRpm: rpm.value,
      onsetUncertaintyRpm: Math.abs(rpm.slopePerS) * crossingUncertaintyS(data, atS),
      onsetBasis: targetKpa === null ? 'settled' : 'target',
    },
    notes: [],
  };
}

/** Engine speed at a moment, through the same local parabola. */
export function speedAt(engine: Series, atS: number): { value: number; slopePerS: number } {
  const near = partOf(engine, atS - 1, atS + 1);
  if (near.values.length < 3)
    return { value: valueAt(engine, atS) ?? engine.values.at(-1) ?? 0, slopePerS: 0 };
  const fit = localQuadratic(near, atS, SPEED_WINDOW);
  return { value: fit.value, slopePerS: fit.slopePerS };
}

function percentOf(share: number): number {
  return Math.round(share * 1e4) / 100;
}

function meanOf(values: Float64Array): number {
  return values.length === 0 ? 0 : values.reduce((sum, value) => sum + value, 0) / values.length;
}
