import type { ChannelQuantity } from '../channel-quantities.js';
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
    channel,
  };
}
