import { DEFAULT_RISK_LIMIT, DEFAULT_STEP_LIMIT } from './check-duty-request.js';
import type { DutyAdviceRequest } from './duty-advice-types.js';
import { drawParticles } from './draw-particles.js';
import { dutyGrid } from './duty-grid.js';
import type { BuildLean } from './earlier-cars.js';
import { meanExcess } from './mean-excess.js';
import type { PeakMixture } from './peak-mixture.js';
import { chanceMeanBelow, chancePeakAbove, predictPeak } from './predict-peak.js';
import { responsePosterior, type ResponsePosterior } from './response-posterior.js';
import { scalePulls, type ScaledPulls } from './scaled-pulls.js';
import { suddenRise } from './sudden-rise.js';
import { thinPosterior } from './thin-posterior.js';

/** Explanations kept for sums over the whole duty range. */
const THIN_COUNT = 200;

/** A request, what its pulls say, and the questions that the decision asks of both. */
export interface DutySituation {
  readonly request: DutyAdviceRequest;
  readonly stepLimit: number;
  readonly riskLimit: number;
  readonly grid: readonly number[];
  readonly pulls: ScaledPulls;
  readonly posterior: ResponsePosterior;
  /** The same from this car's pulls alone; the risk is judged by the worse of the two. */
  readonly alone: ResponsePosterior;
  readonly thin: ResponsePosterior;
  /** How far `posterior` leans on earlier cars of the build; null where there are none. */
  readonly lean: BuildLean | null;
  /** Logs of peak over target. */
  readonly levels: { readonly low: number; readonly high: number; readonly ceiling: number };
}

/** Brings a checked request into units of the target and works out the posterior. */
export function dutySituation(request: DutyAdviceRequest): DutySituation {
  const pulls = scalePulls(request.pulls, request);
  const alone = responsePosterior(pulls, drawParticles(pulls));
  const { targetKpa, toleranceKpa, ceilingKpa } = request.goal;
  return {
    request,
    stepLimit: request.stepLimit ?? DEFAULT_STEP_LIMIT,
    riskLimit: request.riskLimit ?? DEFAULT_RISK_LIMIT,
    grid: dutyGrid(request.controller),
    pulls,
    posterior: alone,
    alone,
    thin: thinPosterior(alone, THIN_COUNT),
    lean: null,
    levels: {
      low: Math.log1p(-toleranceKpa / targetKpa),
      high: Math.log1p(toleranceKpa / targetKpa),
      ceiling: Math.log(ceilingKpa / targetKpa),
    },
  };
}

/** The same situation, its expectations sharpened by what earlier cars of the build say of the curves. */
export function leaningSituation(
  situation: DutySituation,
  logPrior: Float64Array,
  lean: BuildLean,
): DutySituation {
  const posterior = responsePosterior(situation.pulls, drawParticles(situation.pulls, { logPrior }));
  return { ...situation, posterior, thin: thinPosterior(posterior, THIN_COUNT), lean };
}

/**
 * Chance that the next peak at this duty passes the ceiling, a sudden rise on new ground reckoned with; with earlier cars,
 * the worse of with and without.
 */
export function chanceOverCeiling(situation: DutySituation, duty: number): number {
  const { ceiling } = situation.levels;
  return worseOf(situation, duty, (mixture) => {
    const known = chancePeakAbove(mixture, ceiling);
    return known + (1 - known) * suddenRise(situation.pulls, { duty, mixture, ceiling }).chance;
  });
}

/** How far the next peak is expected to pass the ceiling, log; reckoned like its chance. */
export function excessOverCeiling(situation: DutySituation, duty: number): number {
  const { ceiling } = situation.levels;
  return worseOf(situation, duty, (mixture) => {
    return meanExcess(mixture, ceiling) + suddenRise(situation.pulls, { duty, mixture, ceiling }).excess;
  });
}

function worseOf(
  { posterior, alone }: DutySituation,
  duty: number,
  figure: (mixture: PeakMixture) => number,
): number {
  const own = figure(predictPeak(alone, duty));
  return posterior === alone ? own : Math.max(own, figure(predictPeak(posterior, duty)));
}

/** Chance that a mixture's mean is inside the tolerance. */
export function chanceInside(mixture: PeakMixture, { low, high }: DutySituation['levels']): number {
  return chanceMeanBelow(mixture, high) - chanceMeanBelow(mixture, low);
}
