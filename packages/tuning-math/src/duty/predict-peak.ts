import { particleRatio } from './draw-particles.js';
import { normalShareBelow } from './normal-table.js';
import { departureCovariance } from './peak-covariance.js';
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
  const count = explanations.length;
  const links = linksTo(posterior, duty);
  const mixture: PeakMixture = {
    weights: new Float64Array(count),
    centres: new Float64Array(count),
    meanSpreads: new Float64Array(count),
    peakSpreads: new Float64Array(count),
  };
  const variances = SCATTERS.map((_, scatter) => varianceTerms(posterior, scatter, links));
  const curveLogs = new Map<number, number>();
  explanations.forEach((explanation, row) => {
    const { particle, scatter, falsePull, weight } = explanation;
    let curve = curveLogs.get(particle);
    if (curve === undefined) {
      curve = Math.log(particleRatio(particles, particle, duty));
      curveLogs.set(particle, curve);
    }
    const variance = varianceWith(variances[scatter], posterior, { scatter, falsePull });
    mixture.weights[row] = weight;
    mixture.centres[row] = curve + departure(posterior, row, links.toPulls);
    mixture.meanSpreads[row] = Math.sqrt(variance);
    mixture.peakSpreads[row] = Math.sqrt(variance + (SCATTERS[scatter] ?? 0) ** 2);
  });
  return mixture;
}

interface Links {
  readonly toPulls: Float64Array;
  readonly own: number;
}

function linksTo({ pulls }: ResponsePosterior, duty: number): Links {
  const toPulls = pulls.duties.map((pullDuty, j) =>
    departureCovariance([duty, pullDuty], [pulls.nextHeat, pulls.heats[j] ?? 0]),
  );
  return { toPulls, own: departureCovariance([duty, duty], [pulls.nextHeat, pulls.nextHeat]) };
}

interface VarianceTerms {
  readonly solved: Float64Array;
  readonly variance: number;
}

function varianceTerms({ precisions }: ResponsePosterior, scatter: number, links: Links): VarianceTerms {
  const precision = precisions[scatter];
  const size = precision?.size ?? 0;
  const solved = new Float64Array(size);
  let variance = links.own;
  for (let i = 0; i < size; i += 1) {
    let sum = 0;
    for (let k = 0; k < size; k += 1)
      sum += (precision?.inverse[i * size + k] ?? 0) * (links.toPulls[k] ?? 0);
    solved[i] = sum;
    variance -= sum * (links.toPulls[i] ?? 0);
  }
  return { solved, variance };
}

function varianceWith(
  terms: VarianceTerms | undefined,
  { precisions }: ResponsePosterior,
  { scatter, falsePull }: { scatter: number; falsePull: number },
): number {
  if (!terms) return 0;
  if (falsePull < 0) return Math.max(terms.variance, 1e-10);
  const precision = precisions[scatter];
  const stray = FALSE_STRAY * FALSE_STRAY;
  const own = precision?.inverse[falsePull * precision.size + falsePull] ?? 0;
  const lost = (terms.solved[falsePull] ?? 0) ** 2 * (stray / (1 + stray * own));
  return Math.max(terms.variance + lost, 1e-10);
}

function departure({ coefficients, pulls }: ResponsePosterior, row: number, toPulls: Float64Array): number {
  let sum = 0;
  for (let j = 0; j < pulls.count; j += 1)
    sum += (coefficients[row * pulls.count + j] ?? 0) * (toPulls[j] ?? 0);
  return sum;
}

/** Chance that the next reading is above a level (log of peak over target). */
export function chancePeakAbove({ weights, centres, peakSpreads }: PeakMixture, level: number): number {
  let chance = 0;
  for (let row = 0; row < weights.length; row += 1) {
    chance += (weights[row] ?? 0) * normalShareBelow(((centres[row] ?? 0) - level) / (peakSpreads[row] ?? 1));
  }
  return chance;
}

/** Chance that the car's mean is below a level (log of peak over target). */
export function chanceMeanBelow({ weights, centres, meanSpreads }: PeakMixture, level: number): number {
  let chance = 0;
  for (let row = 0; row < weights.length; row += 1) {
    chance += (weights[row] ?? 0) * normalShareBelow((level - (centres[row] ?? 0)) / (meanSpreads[row] ?? 1));
  }
  return chance;
}
