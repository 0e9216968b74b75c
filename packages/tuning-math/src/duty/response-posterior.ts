import { drawParticles, particleRatio, type Particles } from './draw-particles.js';
import { explainPulls, type Evidence, type Explained, type Explanations } from './explain-pulls.js';
import { explainedCurves, type ExplainedCurves } from './explained-curves.js';
import { matrixTimes } from './matrix-times.js';
import type { PeakPrecision } from './peak-covariance.js';
import type { PeakMixture } from './peak-mixture.js';
import { FALSE_STRAY, SCATTERS } from './response-settings.js';
import type { ScaledPulls } from './scaled-pulls.js';

/** A pull more likely false than this is taken as false for good, so that a second false one can show. */
const SURELY_FALSE = 0.7;
const MOST_ROUNDS = 3;

/** What the pulls say about this car's response. */
export interface ResponsePosterior {
  readonly pulls: ScaledPulls;
  readonly particles: Particles;
  readonly explanations: Explanations;
  /** One for each of `SCATTERS`. */
  readonly precisions: readonly PeakPrecision[];
  /** For each pull a row of `explanations.count`: how departures from each one's curve follow from that pull. */
  readonly coefficients: Float64Array;
  /** Chance that each pull is false. */
  readonly falseChances: Float64Array;
  /** Mean of the pull-to-pull scatter, log. */
  readonly scatter: number;
  readonly curves: ExplainedCurves;
  /** What is expected at the duties that were asked for so far. */
  readonly mixtures: Map<number, PeakMixture>;
}

/**
 * Posterior over curve, departure from it, pull-to-pull scatter, heat soak and false pulls, given a car's pulls.
 * Library curves are drawn by a coarse fit and weighed by a Gaussian process around each of them.
 *
 * @param particles curves to weigh; left out: drawn for these pulls
 * Cost: O(library · pulls + particles · scatters · pulls²).
 * Source: Rasmussen & Williams, Gaussian Processes for Machine Learning (2006), ch. 2 (prediction, marginal
 * likelihood); Hoeting et al., Bayesian Model Averaging, Stat. Sci. 14 (1999).
 */
export function responsePosterior(
  pulls: ScaledPulls,
  particles: Particles = drawParticles(pulls),
): ResponsePosterior {
  const evidence = { pulls, particles, misses: missesOf(pulls, particles) };
  const surelyFalse = new Set<number>();
  for (let round = 1; ; round += 1) {
    const explained = explainPulls(evidence, surelyFalse);
    const added = newlyFalse(explained.falseChances, surelyFalse);
    if (added === -1 || round === MOST_ROUNDS) return assemble(evidence, explained);
    surelyFalse.add(added);
  }
}

function missesOf(pulls: ScaledPulls, particles: Particles): Float64Array {
  const misses = new Float64Array(particles.count * pulls.count);
  for (let p = 0; p < particles.count; p += 1) {
    for (let j = 0; j < pulls.count; j += 1) {
      const curve = Math.log(particleRatio(particles, p, pulls.duties[j] as number));
      misses[p * pulls.count + j] = (pulls.logs[j] as number) - curve;
    }
  }
  return misses;
}

function newlyFalse(chances: Float64Array, known: ReadonlySet<number>): number {
  let most = -1;
  chances.forEach((chance, pull) => {
    if (!known.has(pull) && chance > Math.max(SURELY_FALSE, chances[most] ?? 0)) most = pull;
  });
  return most;
}

function assemble(evidence: Evidence, explained: Explained): ResponsePosterior {
  const { explanations, precisions } = explained;
  const size = evidence.pulls.count;
  const coefficients = new Float64Array(explanations.count * size);
  const ofRow = new Float64Array(size);
  let scatter = 0;
  for (let row = 0; row < explanations.count; row += 1) {
    const own = explanations.scatters[row] as number;
    scatter += (explanations.weights[row] as number) * (SCATTERS[own] as number);
    fillCoefficients(ofRow, precisions[own] as PeakPrecision, {
      misses: evidence.misses,
      particle: explanations.particles[row] as number,
      falsePull: explanations.falsePulls[row] as number,
    });
    for (let j = 0; j < size; j += 1) coefficients[j * explanations.count + row] = ofRow[j] as number;
  }
  const { pulls, particles } = evidence;
  const curves = explainedCurves(particles, explanations, size);
  return { ...explained, pulls, particles, coefficients, scatter, curves, mixtures: new Map() };
}

interface Origin {
  readonly misses: Float64Array;
  readonly particle: number;
  readonly falsePull: number;
}

function fillCoefficients(
  row: Float64Array,
  { inverse, size }: PeakPrecision,
  { misses, particle, falsePull }: Origin,
): void {
  matrixTimes(inverse, misses, particle * size, row);
  if (falsePull < 0) return;
  const stray = FALSE_STRAY * FALSE_STRAY;
  const widening = 1 + stray * (inverse[falsePull * size + falsePull] as number);
  const share = (stray * (row[falsePull] as number)) / widening;
  for (let i = 0; i < size; i += 1) {
    row[i] = (row[i] as number) - share * (inverse[i * size + falsePull] as number);
  }
}
