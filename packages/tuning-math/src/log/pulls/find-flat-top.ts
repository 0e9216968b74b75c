import { normalCdf } from '../../numerics/index.js';
import { partOf } from '../filter/series.js';
import { resolutionOf } from './measure-peak.js';
import { lineThrough } from './measure-settled.js';
import type { PullData } from './pull-data.js';

const LEAST_RUN_S = 0.12;
const LEAST_SAMPLES = 4;
const SAME_KPA = 0.05;
const LEAST_UNBROKEN_SHARE = 0.45;
const STEEP_SHARE = 0.015;
const APPROACH_S = 0.12;
const APPROACH_STEPS = 2.2;
const LEAST_NOISE_KPA = 0.05;

/** Samples at the very top of a pull that show no noise at all: a sensor or input at its full scale. */
export interface FlatTop {
  readonly levelKpa: number;
  readonly durationS: number;
}

/**
 * A run of equal samples at the highest value of a pull although the rest of the pull shows noise: the
 * sensor has reached full scale and the true peak is not known. With a given full scale, any sample at it
 * counts.
 *
 * @param fullScaleKpa of the sensor, gauge; null where not known
 * Source: common practice, no source.
 */
export function findFlatTop(data: PullData, fullScaleKpa: number | null): FlatTop | null {
  const { timeS, values } = data.lead.raw;
  const highest = values.reduce((most, value) => Math.max(most, value), -Infinity);
  const at = [...values.keys()].filter((index) => (values[index] as number) >= highest - SAME_KPA);
  if (fullScaleKpa !== null && highest >= fullScaleKpa - SAME_KPA)
    return { levelKpa: highest, durationS: at.length * data.lead.stepS };
  const run = longestRun(at);
  const durationS = (timeS[run.last] as number) - (timeS[run.first] as number);
  const sampleCount = run.last - run.first + 1;
  if (durationS < LEAST_RUN_S || sampleCount < LEAST_SAMPLES) return null;
  const isUnbroken = sampleCount >= LEAST_UNBROKEN_SHARE * at.length;
  const isClipped =
    noiseIsGone(data, sampleCount) ||
    (isUnbroken && staysForLong(data, durationS, sampleCount)) ||
    (isUnbroken && arrivesSteeply(data, run.first));
  return isClipped ? { levelKpa: highest, durationS } : null;
}

function longestRun(indexes: readonly number[]): { first: number; last: number } {
  let best = { first: indexes[0] ?? 0, last: indexes[0] ?? 0 };
  let run = best;
  for (const index of indexes.slice(1)) {
    run = index === run.last + 1 ? { first: run.first, last: index } : { first: index, last: index };
    if (run.last - run.first > best.last - best.first) best = run;
  }
  return best;
}

/** Boost that levels off by itself slows down first; a clipped one would have gone on well past its top. */
function arrivesSteeply({ lead }: PullData, first: number): boolean {
  const firstS = lead.raw.timeS[first] as number;
  const topKpa = lead.raw.values[first] as number;
  const lookS = Math.max(APPROACH_S, APPROACH_STEPS * lead.stepS);
  const approach = partOf(lead.raw, firstS - lookS, firstS);
  if (approach.values.length < 2) return false;
  const line = lineThrough(approach);
  const wouldGainKpa = line(firstS + lookS) - line(firstS);
  return wouldGainKpa > Math.max(3 * lead.noiseKpa, STEEP_SHARE * topKpa, 2 * resolutionOf(lead.raw.values));
}

const LONG_S = 3;
const LONG_SAMPLES = 30;
const FINE_STEP_SHARE = 0.01;
const NOISE_STEP_SHARE = 0.25;

/** Real boost does not stay inside one fine step of the figures for seconds on end where its sensor shows noise elsewhere. */
function staysForLong({ lead }: PullData, durationS: number, sampleCount: number): boolean {
  const stepKpa = resolutionOf(lead.raw.values);
  const topKpa = lead.raw.values.reduce((most, value) => Math.max(most, value), 0);
  const isNoisy = lead.noiseKpa > Math.max(LEAST_NOISE_KPA, NOISE_STEP_SHARE * stepKpa);
  return durationS >= LONG_S && sampleCount >= LONG_SAMPLES && stepKpa <= FINE_STEP_SHARE * topKpa && isNoisy;
}

const FALSE_ALARM_CHANCE = 0.001;

/**
 * Noise that spreads over the steps of the figures leaves a run of equal samples only by chance: the
 * longest run that chance explains in so many samples, at the likeliest place of the level between steps.
 */
function noiseIsGone({ lead }: PullData, sampleCount: number): boolean {
  const stepKpa = resolutionOf(lead.raw.values);
  const noiseKpa = Math.sqrt(Math.max(lead.noiseKpa ** 2 - stepKpa ** 2 / 12, 0));
  if (noiseKpa < LEAST_NOISE_KPA) return false;
  const sameChance = Math.min(2 * normalCdf(stepKpa / 2 / noiseKpa) - 1, 0.95);
  const longestByChance =
    Math.log(lead.raw.values.length / FALSE_ALARM_CHANCE) / -Math.log(Math.max(sameChance, 1e-6));
  return sampleCount >= LEAST_SAMPLES && sampleCount > longestByChance;
}
