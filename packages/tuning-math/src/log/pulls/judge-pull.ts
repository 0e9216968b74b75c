import { amount, sentence, type Sentence } from '../../sentences/index.js';
import { partOf } from '../filter/series.js';
import type { LogNotice } from '../log-notice.js';
import type { LogOptions } from '../log-options.js';
import type { PullSettings } from '../pull-settings.js';
import { findFlatTop } from './find-flat-top.js';
import type { GearFinding } from './find-gear.js';
import { findHoles } from './find-missing.js';
import type { PeakMeasure } from './measure-peak.js';
import type { ResponseMeasure } from './measure-response.js';
import type { PullData } from './pull-data.js';

/** What a pull is judged by. */
export interface JudgedPull {
  readonly data: PullData;
  readonly peak: PeakMeasure;
  readonly response: ResponseMeasure;
  readonly gear: GearFinding;
  readonly slipPct: number | null;
  readonly lowestThrottlePct: number | null;
  readonly boostDoubt: Sentence | null;
}

/**
 * Why a pull must not be used for tuning; an empty list where it may.
 *
 * Source: thresholds in PullSettings are common practice, no source.
 */
export function judgePull(pull: JudgedPull, options: LogOptions, settings: PullSettings): LogNotice[] {
  return [
    ...judgeDoubt(pull),
    ...judgeLift(pull, settings),
    ...judgeLength(pull, settings),
    ...judgeSlip(pull, settings),
    ...judgeGear(pull, settings),
    ...judgeFullScale(pull, options),
    ...judgeRate(pull, settings),
    ...judgeHoles(pull),
  ];
}

function judgeDoubt({ boostDoubt }: JudgedPull): LogNotice[] {
  return boostDoubt === null
    ? []
    : [
        {
          code: 'pressure-doubtful',
          ...sentence`unit or kind of the boost column is in doubt: ${boostDoubt}`,
        },
      ];
}

function judgeLift({ lowestThrottlePct }: JudgedPull, settings: PullSettings): LogNotice[] {
  if (lowestThrottlePct === null || lowestThrottlePct >= settings.fullThrottlePct) return [];
  return [
    { code: 'lifted', text: `the throttle was lifted to ${Math.round(lowestThrottlePct)} % during the pull` },
  ];
}

function judgeLength({ data }: JudgedPull, settings: PullSettings): LogNotice[] {
  const durationS = data.span.endS - data.span.startS;
  const speeds = data.engine.values;
  const spanRpm =
    speeds.length > 1
      ? speeds.reduce((most, rpm) => Math.max(most, rpm), 0) - (speeds[0] as number)
      : Infinity;
  if (durationS < settings.leastDurationS)
    return [{ code: 'short', text: `the pull lasts only ${durationS.toFixed(1)} s` }];
  if (spanRpm < settings.leastSpanRpm)
    return [{ code: 'short', text: `the pull covers only ${Math.round(spanRpm)} r/min` }];
  return [];
}

function judgeSlip({ slipPct }: JudgedPull, settings: PullSettings): LogNotice[] {
  if (slipPct === null || slipPct < settings.slipPct) return [];
  return [{ code: 'slipped', text: `wheels or clutch slipped by ${slipPct.toFixed(0)} %` }];
}

function judgeGear({ gear }: JudgedPull, settings: PullSettings): LogNotice[] {
  // A gear by usual gearing is a guess: it may warn, but it must not void a pull.
  if (gear.gear === null || gear.gearBasis === 'usual-gearing' || settings.trustedGears.includes(gear.gear))
    return [];
  return [
    {
      code: 'wrong-gear',
      text: `pulled in gear ${gear.gear}; gears ${settings.trustedGears.join(' and ')} load the engine as a tuning pull needs`,
    },
  ];
}

function judgeFullScale({ data }: JudgedPull, options: LogOptions): LogNotice[] {
  const top = findFlatTop(data, options.sensorFullScaleKpa ?? null);
  if (top === null) return [];
  return [
    {
      code: 'sensor-full-scale',
      ...sentence`the sensor stands at its full scale of ${amount(top.levelKpa, 'kPa', 0)}: the true peak is higher and not known`,
    },
  ];
}

function judgeRate({ data, response }: JudgedPull, settings: PullSettings): LogNotice[] {
  const { stepS } = data.lead;
  if (!(stepS > 0)) return [{ code: 'sample-rate-too-low', text: 'the pull holds a single sample of boost' }];
  const inRise = response.riseTimeS === null ? Infinity : response.riseTimeS / stepS;
  if (inRise >= settings.leastRiseSamples && 1 / stepS >= settings.leastBoostRateHz) return [];
  return [
    {
      code: 'sample-rate-too-low',
      text: `${(1 / stepS).toFixed(1)} samples a second are too few to see the peak of this pull`,
    },
  ];
}

/** A hole hurts where the peak may hide in it: from the end of the rise to a moment past the peak. */
function judgeHoles({ data, peak }: JudgedPull): LogNotice[] {
  const level = 0.7 * peak.peakKpa;
  return findHoles(data).flatMap((hole) => {
    const around = partOf(data.lead.smooth, hole.startS - 0.3, hole.endS + 0.3).values;
    if (!around.some((valueKpa) => valueKpa >= level)) return [];
    const text = `boost is ${hole.kind === 'stuck' ? 'stuck at one value' : 'not logged'} for ${(hole.endS - hole.startS).toFixed(2)} s near its top`;
    return [{ code: hole.kind === 'stuck' ? 'samples-stuck' : 'samples-missing', text }];
  });
}
