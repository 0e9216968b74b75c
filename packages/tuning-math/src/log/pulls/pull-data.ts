import type { ChannelQuantity } from '../channel-quantities.js';
import { median } from '../filter/hampel-filter.js';
import { cleanBoost, type CleanBoost } from '../filter/clean-boost.js';
import { cutSeries, partOf, type Series } from '../filter/series.js';
import type { LogSamples } from '../log-samples.js';
import type { PullSettings } from '../pull-settings.js';
import type { PullSpan } from './find-pulls.js';

/** The channels of one pull. */
export interface PullData {
  readonly span: PullSpan;
  /** From a moment before the start to the end of the pull. */
  readonly lead: CleanBoost;
  /** Filtered boost from start to end. */
  readonly boost: Series;
  readonly engine: Series;
  readonly road: Series;
  readonly undriven: Series;
  readonly airUncertaintyKpa: number;
  /** Usual ratio of driven to undriven wheel speed in this log; null where one of them is not logged. */
  readonly wheelRatio: number | null;
  readonly channel: (quantity: ChannelQuantity) => Series;
}

/** Boost is looked at from this long before full load, so that the foot of its rise is seen. */
const LEAD_S = 0.5;

/** Cuts one pull out of a log and filters its boost; null where it holds no boost sample. */
export function pullData(samples: LogSamples, span: PullSpan, settings: PullSettings): PullData | null {
  const channel = (quantity: ChannelQuantity): Series => {
    return cutSeries(samples.timeS, samples.columns.get(quantity), span.startS, span.endS);
  };
  const column = samples.columns.get('boost-pressure');
  const raw = cutSeries(samples.timeS, column, span.startS - LEAD_S, span.endS);
  if (partOf(raw, span.startS, span.endS).values.length === 0) return null;
  const lead = cleanBoost(raw, settings);
  return {
    span,
    lead,
    boost: partOf(lead.smooth, span.startS, span.endS),
    engine: channel('engine-speed'),
    road: channel('vehicle-speed'),
    undriven: channel('undriven-wheel-speed'),
    airUncertaintyKpa: samples.airUncertaintyKpa,
    wheelRatio: usualWheelRatio(samples),
    channel,
  };
}

const LEAST_ROAD_KMH = 20;
const LEAST_RATIOS = 10;
const MAX_RATIOS = 5000;

/** Median over the whole log: tyres and calibrations differ by a few per cent, slip is short. */
function usualWheelRatio({ columns }: LogSamples): number | null {
  const driven = columns.get('vehicle-speed');
  const undriven = columns.get('undriven-wheel-speed');
  if (driven === undefined || undriven === undefined) return null;
  const ratios: number[] = [];
  const stride = Math.max(1, Math.floor(driven.length / MAX_RATIOS));
  for (let row = 0; row < driven.length; row += stride) {
    const ratio = (driven[row] as number) / (undriven[row] as number);
    if ((undriven[row] as number) >= LEAST_ROAD_KMH && Number.isFinite(ratio)) ratios.push(ratio);
  }
  return ratios.length < LEAST_RATIOS ? null : median(Float64Array.from(ratios));
}
