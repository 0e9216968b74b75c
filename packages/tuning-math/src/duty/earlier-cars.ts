import type { EarlierCar, DutyAdviceRequest } from './duty-advice-types.js';
import { coarseLogFits } from './coarse-fit.js';
import { curveLibrary } from './curve-library.js';
import { buildLogFits, DEVIATIONS } from './build-fit.js';
import { scalePulls, type ScaledPulls } from './scaled-pulls.js';

/** A car with fewer pulls than this tells too little of its curve. */
export const LEAST_EARLIER_PULLS = 3;
/** Chance that this car is not of the build it is booked as, or was changed since. */
const STRANGER_SHARE = 0.15;

/** What earlier cars of the build say of the curves, before this car's own pulls. */
export interface BuildPrior {
  /** Cars that it rests on. */
  readonly carCount: number;
  /** Weight of each library curve by the earlier cars alone; the mean is 1. */
  readonly weights: Float64Array;
  /** Log of the weights, mixed with the even ones of a stranger. */
  readonly logPrior: Float64Array;
}

/** How far an advice leans on earlier cars. */
export interface BuildLean {
  readonly carCount: number;
  /** Chance, given this car's pulls, that it follows the earlier cars: 0 a stranger, 1 one of them. */
  readonly share: number;
}

/**
 * Prior over curves from earlier cars of the same build; undefined where none tells enough. Each library curve
 * weighs by how well it explains those cars, each of which may deviate from it: along duty and in level, by an
 * amount that is itself learnt from them. The cars' part is tempered so that many cars sharpen the curve of the
 * build but never below one car's own deviation from it.
 *
 * Cost: some 50 ms a car at the first request, then kept. Deterministic.
 * Source: empirical Bayes over a hierarchical model, Gelman et al., Bayesian Data Analysis (2013), ch. 5.
 */
export function buildPriorOf({ earlierCars, goal }: DutyAdviceRequest): BuildPrior | undefined {
  const telling = (earlierCars ?? []).filter(({ pulls }) => pulls.length >= LEAST_EARLIER_PULLS);
  if (telling.length === 0) return undefined;
  const key = JSON.stringify([goal.targetKpa, telling]);
  const known = kept.get(key);
  if (known) return known;
  const prior = computePrior(telling, goal);
  const oldest = kept.keys().next();
  if (kept.size >= MOST_KEPT && oldest.done !== true) kept.delete(oldest.value);
  kept.set(key, prior);
  return prior;
}

/** Priors are asked again before every pull of a visit. */
const MOST_KEPT = 12;
const kept = new Map<string, BuildPrior>();

function computePrior(cars: readonly EarlierCar[], goal: DutyAdviceRequest['goal']): BuildPrior {
  const library = curveLibrary();
  const scaled = cars.map(({ pulls, baseKpa }) => scalePulls(pulls, { goal, baseKpa: baseKpa ?? null }));
  const sums = DEVIATIONS.map(() => new Float64Array(library.count));
  for (const pulls of scaled) {
    buildLogFits(library, pulls).forEach((logFits, deviation) => {
      const sum = sums[deviation] as Float64Array;
      logFits.forEach((logFit, row) => (sum[row] = (sum[row] as number) + logFit));
    });
  }
  // A car deviates from the build as the others do: one curve must explain two deviations, hence 2 / (n + 1).
  const temper = 2 / (cars.length + 1);
  const evidences = shareOut(Float64Array.from(sums, (sum) => logMeanOf(sum)));
  const weights = new Float64Array(library.count);
  sums.forEach((sum, deviation) => {
    const shares = shareOut(sum.map((logFit) => temper * logFit));
    const part = (evidences[deviation] as number) * library.count;
    shares.forEach((share, row) => (weights[row] = (weights[row] as number) + part * share));
  });
  const logPrior = weights.map((weight) => Math.log((1 - STRANGER_SHARE) * weight + STRANGER_SHARE));
  return { carCount: cars.length, weights, logPrior };
}

/** How far the advice leans on the earlier cars once this car's pulls are known. */
export function leanOn({ carCount, weights }: BuildPrior, pulls: ScaledPulls): BuildLean {
  const { rows, logFits } = coarseLogFits(curveLibrary(), pulls);
  const ofBuild = shareOut(logFits).reduce(
    (sum, share, fit) => sum + share * (weights[rows[fit] as number] as number),
    0,
  );
  const followed = (1 - STRANGER_SHARE) * ofBuild;
  return { carCount, share: followed / (followed + STRANGER_SHARE) };
}

/** Logs to shares that sum to 1. */
function shareOut(logs: Float64Array): Float64Array {
  const highest = logs.reduce((most, log) => Math.max(most, log), -Infinity);
  const shares = logs.map((log) => Math.exp(log - highest));
  const total = shares.reduce((sum, share) => sum + share, 0);
  return shares.map((share) => share / total);
}

function logMeanOf(logs: Float64Array): number {
  const highest = logs.reduce((most, log) => Math.max(most, log), -Infinity);
  const total = logs.reduce((sum, log) => sum + Math.exp(log - highest), 0);
  return highest + Math.log(total / logs.length);
}
