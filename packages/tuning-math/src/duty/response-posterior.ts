import type { DepartureModes } from './departure-modes.js';
import { drawParticles, type Particles } from './draw-particles.js';
import type { Explanations } from './collect-explanations.js';
import { explainPulls, type Evidence, type WeighedPulls } from './explain-pulls.js';
import { explainedCurves, type ExplainedCurves } from './explained-curves.js';
import { explainedDepartures } from './explained-departures.js';
import { particleLogs } from './particle-logs.js';
import type { PeakPrecision } from './peak-precision.js';
import type { PeakMixture, PeakSpreads } from './peak-mixture.js';
import { SCATTERS } from './response-settings.js';
import type { ScaledPulls } from './scaled-pulls.js';

/** A pull more likely false than this is taken as false for good, so that a second false one can show. */
const SURELY_FALSE = 0.7;
const MOST_ROUNDS = 3;

/** What the pulls say about this car's response. */
export interface ResponsePosterior {
  readonly pulls: ScaledPulls;
  readonly particles: Particles;
  readonly explanations: Explanations;
  readonly modes: DepartureModes;
  /** One for each of `SCATTERS`. */
  readonly precisions: readonly PeakPrecision[];
  /** For each place and for heat a row of `explanations.count`; see `explainedDepartures`. */
  readonly departures: Float64Array;
  /** Chance that each pull is false. */
  readonly falseChances: Float64Array;
  /** Mean of the pull-to-pull scatter, log. */
  readonly scatter: number;
  readonly curves: ExplainedCurves;
  /** What is expected at the duties that were asked for so far. */
  readonly mixtures: Map<number, PeakMixture>;
  /** How wide, the same for all posteriors of these pulls. */
  readonly spreads: Map<number, PeakSpreads>;
}

/**
 * Posterior over curve, departure from it, pull-to-pull scatter, heat soak and false pulls, given a car's pulls.
 * Library curves are drawn by a coarse fit and weighed by a Gaussian process around each of them.
 *
 * @param particles curves to weigh; left out: drawn for these pulls
 * Cost: O(library · pulls + particles · scatters · (pulls + places · modes)).
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
    const weighed = explainPulls(evidence, surelyFalse);
    const added = newlyFalse(weighed.falseChances, surelyFalse);
    if (added === -1 || round === MOST_ROUNDS) return assemble(evidence, weighed);
    surelyFalse.add(added);
  }
}

function missesOf(pulls: ScaledPulls, particles: Particles): Float64Array {
  const misses = new Float64Array(particles.count * pulls.count);
  for (let j = 0; j < pulls.count; j += 1) {
    const curves = particleLogs(particles, pulls.duties[j] as number);
    const reading = pulls.logs[j] as number;
    for (let p = 0; p < particles.count; p += 1)
      misses[p * pulls.count + j] = reading - (curves[p] as number);
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

function assemble({ pulls, particles }: Evidence, weighed: WeighedPulls): ResponsePosterior {
  const { falseChances, precisions, projected } = weighed;
  const explanations = weighed.explanations();
  let scatter = 0;
  for (let row = 0; row < explanations.count; row += 1) {
    const own = explanations.scatters[row] as number;
    scatter += (explanations.weights[row] as number) * (SCATTERS[own] as number);
  }
  const { modes } = projected;
  const departures = explainedDepartures(explanations, precisions, projected);
  const curves = explainedCurves(particles, explanations, pulls.count);
  const told = {
    pulls,
    particles,
    explanations,
    modes,
    precisions,
    departures,
    falseChances,
    scatter,
    curves,
  };
  return { ...told, mixtures: new Map(), spreads: new Map() };
}
