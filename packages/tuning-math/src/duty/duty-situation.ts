import { DEFAULT_RISK_LIMIT, DEFAULT_STEP_LIMIT } from './check-duty-request.js';
import type { DutyAdviceRequest } from './duty-advice-types.js';
import { curveLibrary } from './curve-library.js';
import { drawParticles } from './draw-particles.js';
import { dutyGrid } from './duty-grid.js';
import type { BuildLean } from './earlier-cars.js';
import { meanExcess } from './mean-excess.js';
import type { PeakMixture } from './peak-mixture.js';
import { chanceMeanBelow, chancePeakAbove, predictPeak } from './predict-peak.js';
import { responsePosterior, type ResponsePosterior } from './response-posterior.js';
import { scalePulls, type ScaledPulls } from './scaled-pulls.js';
import type { CurveLibrary } from './tabulate-curves.js';
import { thinPosterior } from './thin-posterior.js';

/** Explanations kept for sums over the whole duty range. */
const THIN_COUNT = 200;

/** A request, what its pulls say, and the questions that the decision asks of both. */
export interface DutySituation {
  readonly request: DutyAdviceRequest;
  /** The responses that are thought possible before any pull. */
  readonly library: CurveLibrary;
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
export function dutySituation(
  request: DutyAdviceRequest,
  library: CurveLibrary = curveLibrary(),
): DutySituation {
  const pulls = scalePulls(request.pulls, request);
  const alone = responsePosterior(pulls, drawParticles(pulls, { library }));
  const { targetKpa, toleranceKpa, ceilingKpa } = request.goal;
  return {
    request,
    library,
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
  const posterior = responsePosterior(
    situation.pulls,
    drawParticles(situation.pulls, { library: situation.library, logPrior }),
  );
  return { ...situation, posterior, thin: thinPosterior(posterior, THIN_COUNT), lean };
}

/** Chance that the next peak at this duty passes the ceiling; with earlier cars, the worse of with and without. */
export function chanceOverCeiling({ posterior, alone, levels }: DutySituation, duty: number): number {
  const own = chancePeakAbove(predictPeak(alone, duty), levels.ceiling);
  if (posterior === alone) return own;
  return Math.max(own, chancePeakAbove(predictPeak(posterior, duty), levels.ceiling));
}

/** Chance that a mixture's mean is inside the tolerance. */
export function chanceInside(mixture: PeakMixture, { low, high }: DutySituation['levels']): number {
  return chanceMeanBelow(mixture, high) - chanceMeanBelow(mixture, low);
}

/** How far the next peak is expected to pass the ceiling, log; with earlier cars, the worse of with and without. */
export function excessOverCeiling({ posterior, alone, levels }: DutySituation, duty: number): number {
  const own = meanExcess(predictPeak(alone, duty), levels.ceiling);
  if (posterior === alone) return own;
  return Math.max(own, meanExcess(predictPeak(posterior, duty), levels.ceiling));
}
