import { normalCdf } from '../../numerics/index.js';
import { partOf, type Series } from '../filter/series.js';
import { resolutionOf } from './measure-peak.js';
import { lineThrough } from './measure-settled.js';
import type { PullData } from './pull-data.js';

const LEAST_RUN_S = 0.12;
const LEAST_SAMPLES = 4;
/** Readings this close are the same one, kPa. */
export const SAME_KPA = 0.05;
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
    lostItsNoise(data, { durationS, sampleCount, isUnbroken }) ||
    (isUnbroken && arrivesSteeply(data, run.first));
  return isClipped ? { levelKpa: highest, durationS } : null;
}

interface TopRun {
  readonly durationS: number;
  readonly sampleCount: number;
  readonly isUnbroken: boolean;
}

/** Whether a trace that shows noise shows none at its top, for longer than chance would have it. */
function lostItsNoise(data: PullData, { durationS, sampleCount, isUnbroken }: TopRun): boolean {
  if (!goesUpAndDown(data.lead.raw.values)) return false;
  return noiseIsGone(data, sampleCount) || (isUnbroken && staysForLong(data, durationS, sampleCount));
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
  const stepKpa = resolutionOf(lead.raw.values);
  const leastGainKpa = Math.max(3 * lead.noiseKpa, STEEP_SHARE * topKpa, 2 * stepKpa);
  if (wouldGainKpa <= leastGainKpa) return false;
  const belowTop = { timeS: approach.timeS.subarray(0, -1), values: approach.values.subarray(0, -1) };
  return !slowsDown(belowTop, Math.max(3 * lead.noiseKpa, 2 * stepKpa));
}

const LEAST_HALF = 2;
const SLOWED_SHARE = 0.6;

/**
 * Whether the rise to the top gains clearly less in its later half than in its earlier one: boost that comes to rest
 * by itself. The sample at the top is left out, since a full scale may cut its step anywhere.
 */
function slowsDown({ timeS, values }: Series, doubtKpa: number): boolean {
  const middle = Math.floor(values.length / 2);
  if (middle < LEAST_HALF) return false;
  const gainOf = (from: number, end: number): number => {
    const line = lineThrough({ timeS: timeS.subarray(from, end), values: values.subarray(from, end) });
    return line(1) - line(0);
  };
  const [early, late] = [gainOf(0, middle), gainOf(middle, values.length)];
  const halfS = ((timeS.at(-1) as number) - (timeS[0] as number)) / 2;
  return late < SLOWED_SHARE * early && (early - late) * halfS > doubtKpa;
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

const LEAST_REVERSALS = 4;

/**
 * Whether neighbouring samples go up and down. What the filter takes away is no proof of noise by itself: of a clean
 * trace in coarse steps it takes away the corners of the steps.
 */
function goesUpAndDown(values: Float64Array): boolean {
  let reversals = 0;
  let last = 0;
  for (let index = 1; index < values.length; index += 1) {
    const move = Math.sign((values[index] as number) - (values[index - 1] as number));
    if (move === 0) continue;
    if (move === -last) reversals += 1;
    last = move;
  }
  return reversals >= LEAST_REVERSALS;
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
