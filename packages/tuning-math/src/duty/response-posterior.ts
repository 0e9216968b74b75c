import { dotProduct } from './dot-product.js';
import { drawParticles, particleRatio, type Particles } from './draw-particles.js';
import { explainPulls, type Evidence, type Explained, type Explanation } from './explain-pulls.js';
import type { PeakPrecision } from './peak-covariance.js';
import { FALSE_STRAY, SCATTERS } from './response-settings.js';
import type { ScaledPulls } from './scaled-pulls.js';

/** A pull more likely false than this is taken as false for good, so that a second false one can show. */
const SURELY_FALSE = 0.7;
const MOST_ROUNDS = 3;

/** What the pulls say about this car's response. */
export interface ResponsePosterior {
  readonly pulls: ScaledPulls;
  readonly particles: Particles;
  readonly explanations: readonly Explanation[];
  /** One for each of `SCATTERS`. */
  readonly precisions: readonly PeakPrecision[];
  /** Rows of `pulls.count` for each explanation: how its departures from the curve follow from the pulls. */
  readonly coefficients: Float64Array;
  /** Chance that each pull is false. */
  readonly falseChances: Float64Array;
  /** Mean of the pull-to-pull scatter, log. */
  readonly scatter: number;
}

/**
 * Posterior over curve, departure from it, pull-to-pull scatter, heat soak and false pulls, given a car's pulls.
 * Library curves are drawn by a coarse fit and weighed by a Gaussian process around each of them.
 *
 * @param logPrior log weight of each library curve before this car's pulls; left out: all alike
 * Cost: O(library · pulls + particles · scatters · pulls²).
 * Source: Rasmussen & Williams, Gaussian Processes for Machine Learning (2006), ch. 2 (prediction, marginal
 * likelihood); Hoeting et al., Bayesian Model Averaging, Stat. Sci. 14 (1999).
 */
export function responsePosterior(pulls: ScaledPulls, logPrior?: Float64Array): ResponsePosterior {
  const particles = drawParticles(pulls, logPrior);
  const evidence = { pulls, particles, misses: missesOf(pulls, particles) };
  const surelyFalse = new Set<number>();
  for (let round = 1; ; round += 1) {
    const explained = explainPulls(evidence, surelyFalse);
    const falseChances = falseChancesOf(explained.explanations, pulls.count, surelyFalse);
    const added = newlyFalse(falseChances, surelyFalse);
    if (added === -1 || round === MOST_ROUNDS) return assemble(evidence, explained, falseChances);
    surelyFalse.add(added);
  }
}

function missesOf(pulls: ScaledPulls, particles: Particles): Float64Array {
  const misses = new Float64Array(particles.count * pulls.count);
  for (let p = 0; p < particles.count; p += 1) {
    for (let j = 0; j < pulls.count; j += 1) {
      const curve = Math.log(particleRatio(particles, p, pulls.duties[j] ?? 0));
      misses[p * pulls.count + j] = (pulls.logs[j] ?? 0) - curve;
    }
  }
  return misses;
}

function falseChancesOf(
  explanations: readonly Explanation[],
  count: number,
  surelyFalse: ReadonlySet<number>,
): Float64Array {
  const chances = new Float64Array(count);
  for (const { falsePull, weight } of explanations) {
    if (falsePull >= 0) chances[falsePull] = (chances[falsePull] ?? 0) + weight;
  }
  surelyFalse.forEach((pull) => (chances[pull] = 1));
  return chances;
}

function newlyFalse(chances: Float64Array, known: ReadonlySet<number>): number {
  let most = -1;
  chances.forEach((chance, pull) => {
    if (!known.has(pull) && chance > Math.max(SURELY_FALSE, chances[most] ?? 0)) most = pull;
  });
  return most;
}

function assemble(evidence: Evidence, explained: Explained, falseChances: Float64Array): ResponsePosterior {
  const size = evidence.pulls.count;
  const coefficients = new Float64Array(explained.explanations.length * size);
  let scatter = 0;
  explained.explanations.forEach((explanation, row) => {
    scatter += explanation.weight * (SCATTERS[explanation.scatter] ?? 0);
    const precision = explained.precisions[explanation.scatter];
    if (precision)
      fillCoefficients(coefficients.subarray(row * size, (row + 1) * size), explanation, [
        evidence,
        precision,
      ]);
  });
  return {
    ...explained,
    pulls: evidence.pulls,
    particles: evidence.particles,
    coefficients,
    falseChances,
    scatter,
  };
}

function fillCoefficients(
  row: Float64Array,
  { particle, falsePull }: Explanation,
  [{ misses }, { inverse, size }]: readonly [Evidence, PeakPrecision],
): void {
  const missRow = { values: misses, start: particle * size };
  for (let i = 0; i < size; i += 1) row[i] = dotProduct({ values: inverse, start: i * size }, missRow, size);
  if (falsePull < 0) return;
  const stray = FALSE_STRAY * FALSE_STRAY;
  const widening = 1 + stray * (inverse[falsePull * size + falsePull] as number);
  const share = (stray * (row[falsePull] as number)) / widening;
  for (let i = 0; i < size; i += 1) {
    row[i] = (row[i] as number) - share * (inverse[i * size + falsePull] as number);
  }
}
