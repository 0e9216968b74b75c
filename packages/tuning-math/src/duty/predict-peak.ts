import { particleRatio } from './draw-particles.js';
import { normalShareBelow } from './normal-table.js';
import { departureCovariance, type PeakPrecision } from './peak-covariance.js';
import { FALSE_STRAY, SCATTERS } from './response-settings.js';
import type { ResponsePosterior } from './response-posterior.js';

/** Mixture of normals in log peak over target: one part for each explanation. */
export interface PeakMixture {
  readonly weights: Float64Array;
  readonly centres: Float64Array;
  /** Standard deviation of the car's own mean at this duty, as hot as it is now. */
  readonly meanSpreads: Float64Array;
  /** Standard deviation of the next reading: the mean's and the scatter. */
  readonly peakSpreads: Float64Array;
}

/** What the posterior expects at a duty, as hot as the car is for the next pull. O(explanations · pulls). */
export function predictPeak(posterior: ResponsePosterior, duty: number): PeakMixture {
  const { explanations, particles } = posterior;
  const { count } = explanations;
  const links = linksTo(posterior, duty);
  const mixture: PeakMixture = {
    weights: explanations.weights,
    centres: new Float64Array(count),
    meanSpreads: new Float64Array(count),
    peakSpreads: new Float64Array(count),
  };
  const spreads = posterior.precisions.map((precision, scatter) => spreadsAt(precision, scatter, links));
  for (let row = 0; row < count; row += 1) {
    const curve = particleRatio(particles, explanations.particles[row] as number, duty);
    mixture.centres[row] = Math.log(curve) + departure(posterior, row, links.toPulls);
    const own = spreads[explanations.scatters[row] as number] as Spreads;
    const which = (explanations.falsePulls[row] as number) + 1;
    mixture.meanSpreads[row] = own.mean[which] as number;
    mixture.peakSpreads[row] = own.peak[which] as number;
  }
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

/** Standard deviations of mean and reading with no pull false (first) and with each pull false (the others). */
interface Spreads {
  readonly mean: Float64Array;
  readonly peak: Float64Array;
}

/** Spreads below this are rounding, not knowledge. */
const LEAST_VARIANCE = 1e-10;

function spreadsAt({ inverse, size }: PeakPrecision, scatter: number, { toPulls, own }: Links): Spreads {
  const mean = new Float64Array(size + 1);
  const solved = new Float64Array(size);
  let plain = own;
  for (let i = 0; i < size; i += 1) {
    let sum = 0;
    for (let k = 0; k < size; k += 1) sum += (inverse[i * size + k] as number) * (toPulls[k] as number);
    solved[i] = sum;
    plain -= sum * (toPulls[i] as number);
  }
  mean[0] = plain;
  const stray = FALSE_STRAY * FALSE_STRAY;
  for (let j = 0; j < size; j += 1) {
    const lost = stray / (1 + stray * (inverse[j * size + j] as number));
    mean[j + 1] = plain + (solved[j] as number) ** 2 * lost;
  }
  const noise = (SCATTERS[scatter] as number) ** 2;
  return {
    mean: mean.map((variance) => Math.sqrt(Math.max(variance, LEAST_VARIANCE))),
    peak: mean.map((variance) => Math.sqrt(Math.max(variance, LEAST_VARIANCE) + noise)),
  };
}

function departure({ coefficients, pulls }: ResponsePosterior, row: number, toPulls: Float64Array): number {
  const start = row * pulls.count;
  let sum = 0;
  for (let j = 0; j < pulls.count; j += 1)
    sum += (coefficients[start + j] as number) * (toPulls[j] as number);
  return sum;
}

/** Chance that the next reading is above a level (log of peak over target). */
export function chancePeakAbove({ weights, centres, peakSpreads }: PeakMixture, level: number): number {
  let chance = 0;
  for (let row = 0; row < weights.length; row += 1) {
    const away = ((centres[row] as number) - level) / (peakSpreads[row] as number);
    chance += (weights[row] as number) * normalShareBelow(away);
  }
  return chance;
}

/** Chance that the car's mean is below a level (log of peak over target). */
export function chanceMeanBelow({ weights, centres, meanSpreads }: PeakMixture, level: number): number {
  let chance = 0;
  for (let row = 0; row < weights.length; row += 1) {
    const away = (level - (centres[row] as number)) / (meanSpreads[row] as number);
    chance += (weights[row] as number) * normalShareBelow(away);
  }
  return chance;
}
