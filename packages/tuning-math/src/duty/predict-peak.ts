import { explainedRatio } from './explained-curves.js';
import { normalShareBelow } from './normal-table.js';
import type { PeakMixture } from './peak-mixture.js';
import { departureCovariance, type PeakPrecision } from './peak-covariance.js';
import { FALSE_STRAY, SCATTERS } from './response-settings.js';
import type { ResponsePosterior } from './response-posterior.js';

/**
 * What the posterior expects at a duty, as hot as the car is for the next pull; worked out once for each duty.
 *
 * Cost: O(explanations · pulls) the first time.
 */
export function predictPeak(posterior: ResponsePosterior, duty: number): PeakMixture {
  const known = posterior.mixtures.get(duty);
  if (known) return known;
  const { explanations, curves } = posterior;
  const links = linksTo(posterior, duty);
  const centres = departures(posterior, links.toPulls);
  for (let row = 0; row < explanations.count; row += 1)
    centres[row] = Math.log(explainedRatio(curves, row, duty)) + (centres[row] as number);
  const mixture = {
    weights: explanations.weights,
    centres,
    places: curves.spreadPlaces,
    ...spreadTables(posterior, links),
  };
  posterior.mixtures.set(duty, mixture);
  return mixture;
}

interface Links {
  readonly toPulls: Float64Array;
  readonly own: number;
}

function linksTo({ pulls }: ResponsePosterior, duty: number): Links {
  const toPulls = pulls.duties.map((pullDuty, j) =>
    departureCovariance([duty, pullDuty], [pulls.nextHeat, pulls.heats[j] as number]),
  );
  return { toPulls, own: departureCovariance([duty, duty], [pulls.nextHeat, pulls.nextHeat]) };
}

/** Spreads below this are rounding, not knowledge. */
const LEAST_VARIANCE = 1e-10;

/** For each scatter, standard deviations with no pull false (first) and with each pull false (the others). */
function spreadTables(
  { precisions, pulls }: ResponsePosterior,
  links: Links,
): Pick<PeakMixture, 'meanSpreads' | 'peakSpreads'> {
  const width = pulls.count + 1;
  const meanSpreads = new Float64Array(precisions.length * width);
  const peakSpreads = new Float64Array(precisions.length * width);
  for (let scatter = 0; scatter < precisions.length; scatter += 1) {
    const variances = meanVariances(precisions[scatter] as PeakPrecision, links);
    const noise = (SCATTERS[scatter] as number) ** 2;
    for (let which = 0; which < width; which += 1) {
      const variance = Math.max(variances[which] as number, LEAST_VARIANCE);
      meanSpreads[scatter * width + which] = Math.sqrt(variance);
      peakSpreads[scatter * width + which] = Math.sqrt(variance + noise);
    }
  }
  return { meanSpreads, peakSpreads };
}

function meanVariances({ inverse, size }: PeakPrecision, { toPulls, own }: Links): Float64Array {
  const variances = new Float64Array(size + 1);
  let plain = own;
  for (let i = 0; i < size; i += 1) {
    let sum = 0;
    for (let k = 0; k < size; k += 1) sum += (inverse[i * size + k] as number) * (toPulls[k] as number);
    variances[i + 1] = sum;
    plain -= sum * (toPulls[i] as number);
  }
  variances[0] = plain;
  const stray = FALSE_STRAY * FALSE_STRAY;
  for (let j = 0; j < size; j += 1) {
    const lost = stray / (1 + stray * (inverse[j * size + j] as number));
    variances[j + 1] = plain + (variances[j + 1] as number) ** 2 * lost;
  }
  return variances;
}

/** How far each explanation expects the peak from its curve, log. */
function departures(
  { coefficients, explanations, pulls }: ResponsePosterior,
  toPulls: Float64Array,
): Float64Array {
  const { count } = explanations;
  const sums = new Float64Array(count);
  for (let j = 0; j < pulls.count; j += 1) {
    const link = toPulls[j] as number;
    const from = j * count;
    for (let row = 0; row < count; row += 1)
      sums[row] = (sums[row] as number) + (coefficients[from + row] as number) * link;
  }
  return sums;
}

/** Chance that the next reading is above a level (log of peak over target). */
export function chancePeakAbove(
  { weights, centres, places, peakSpreads }: PeakMixture,
  level: number,
): number {
  let chance = 0;
  for (let row = 0; row < weights.length; row += 1) {
    const away = ((centres[row] as number) - level) / (peakSpreads[places[row] as number] as number);
    chance += (weights[row] as number) * normalShareBelow(away);
  }
  return chance;
}

/** Chance that the car's mean is below a level (log of peak over target). */
export function chanceMeanBelow(
  { weights, centres, places, meanSpreads }: PeakMixture,
  level: number,
): number {
  let chance = 0;
  for (let row = 0; row < weights.length; row += 1) {
    const away = (level - (centres[row] as number)) / (meanSpreads[places[row] as number] as number);
    chance += (weights[row] as number) * normalShareBelow(away);
  }
  return chance;
}
