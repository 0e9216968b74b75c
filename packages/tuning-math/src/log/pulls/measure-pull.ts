import { amount, sentence } from '../../sentences/index.js';
import { firstIndexFrom, type Series } from '../filter/series.js';
import type { LogPull } from '../log-analysis.js';
import type { LogNotice } from '../log-notice.js';
import type { LogOptions } from '../log-options.js';
import type { LogSamples } from '../log-samples.js';
import type { PullSettings } from '../pull-settings.js';
import { findGear, type GearFinding } from './find-gear.js';
import type { PullSpan } from './find-pulls.js';
import { judgePull } from './judge-pull.js';
import { measureGradient } from './measure-gradient.js';
import { measureHunting } from './measure-hunting.js';
import { measurePeak, type PeakMeasure } from './measure-peak.js';
import { measureResponse, speedAt } from './measure-response.js';
import { measureSlip } from './measure-slip.js';
import { measureTaper } from './measure-taper.js';
import { pullData, type PullData } from './pull-data.js';
import { readMarkers } from './read-markers.js';

/** Measures and judges one pull; null where it holds no boost at all. */
export function measurePull(
  samples: LogSamples,
  span: PullSpan,
  options: LogOptions,
  settings: PullSettings,
): LogPull | null {
  const data = pullData(samples, span, settings);
  if (data === null) return null;
  const peak = measurePeak(data);
  const response = measureResponse(data, peak, options.targetKpa ?? null, settings);
  const gear = findGear(data, options);
  const slipPct = measureSlip(data);
  const lowestThrottlePct = lowestThrottle(data);
  const faults = judgePull(
    { data, peak, response, gear, slipPct, lowestThrottlePct, boostDoubt: samples.boostDoubt },
    options,
    settings,
  );
  const markers = readMarkers(data, settings);
  const { settled } = response;
  return {
    startS: round(span.startS),
    endS: round(span.endS),
    startRpm: speedNear(data.engine, span.startS),
    endRpm: speedNear(data.engine, span.endS),
    ...gear,
    peakKpa: round(peak.peakKpa),
    peakTimeS: round(peak.peakTimeS),
    peakRpm: speedNear(data.engine, peak.peakTimeS),
    rawPeakKpa: round(peak.rawPeakKpa),
    settledKpa: rounded(settled?.settledKpa ?? null),
    overshootPct: rounded(response.overshootPct),
    riseTimeS: rounded(response.riseTimeS),
    onsetRpm: rounded(response.onsetRpm),
    onsetBasis: response.onsetBasis,
    taperKpaPer1000Rpm: rounded(measureTaper(data, settled)),
    hunting: measureHunting(data, settled),
    lowestThrottlePct: rounded(lowestThrottlePct),
    slipPct: rounded(slipPct),
    gradientPct: rounded(measureGradient(data)),
    ...markers.figures,
    boostRateHz: data.lead.stepS > 0 ? round(1 / data.lead.stepS) : null,
    uncertainty: {
      peakKpa: round(peak.uncertaintyKpa),
      settledKpa: rounded(response.settledUncertaintyKpa),
      overshootPct: rounded(response.overshootUncertaintyPct),
      riseTimeS: rounded(response.riseUncertaintyS),
      onsetRpm: rounded(response.onsetUncertaintyRpm),
    },
    usable: faults.length === 0,
    reasons: [
      ...faults,
      ...response.notes,
      ...markers.notes,
      ...peakNote(peak),
      ...spikeNote(data),
      ...gearNote(gear, settings),
    ],
  };
}

const DECIMALS = 1e4;

/** Figures are given to a ten-thousandth of their unit, far below their uncertainty. */
function round(value: number): number {
  return Math.round(value * DECIMALS) / DECIMALS;
}

function rounded(value: number | null): number | null {
  return value === null ? null : round(value);
}

function speedNear(engine: Series, atS: number): number | null {
  return engine.values.length === 0 ? null : Math.round(speedAt(engine, atS).value * 10) / 10;
}

/** Lowest throttle well inside the pull; null without a throttle or pedal. */
function lowestThrottle(data: PullData): number | null {
  const quantity = data.span.basis;
  if (quantity === 'boost') return null;
  const throttle = data.channel(quantity);
  const first = firstIndexFrom(throttle.timeS, data.span.startS);
  const inside = throttle.values.subarray(first);
  return inside.length === 0 ? null : inside.reduce((lowest, value) => Math.min(lowest, value), 100);
}

const WIDEST_SHARE = 0.01;

/** Said where two standard uncertainties are more than a hundredth of the peak. */
function peakNote({ peakKpa, uncertaintyKpa }: PeakMeasure): LogNotice[] {
  if (2 * uncertaintyKpa <= WIDEST_SHARE * Math.abs(peakKpa)) return [];
  const known = amount(2 * uncertaintyKpa, 'kPa');
  return [
    { code: 'peak-uncertain', ...sentence`the peak is known only to ±${known} (two standard uncertainties)` },
  ];
}

function spikeNote(data: PullData): LogNotice[] {
  const { spikeCount } = data.lead;
  return spikeCount === 0
    ? []
    : [{ code: 'spikes-removed', text: `${spikeCount} single wild samples of boost were replaced` }];
}

function gearNote({ gear, gearBasis }: GearFinding, settings: PullSettings): LogNotice[] {
  if (gear === null) {
    return [
      { code: 'gear-unknown', text: 'the gear cannot be told: no gear or road speed that fits the car' },
    ];
  }
  if (gearBasis !== 'usual-gearing' || settings.trustedGears.includes(gear)) return [];
  const text = `by usual gearing this looks like gear ${gear}: enter the car's ratios, and check that the gear was right`;
  return [{ code: 'gear-doubtful', text }];
}
