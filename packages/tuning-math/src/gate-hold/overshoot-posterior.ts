import {
  EARLY_SHARE,
  JITTERS,
  LET_GO_PLACE,
  MIDDLE_SHARE,
  RISE_SHAPES,
  riseAt,
  SCATTERS,
  type RiseShape,
} from './curve-family.js';
import type { HoldPull } from './gate-hold-types.js';
import { holdPrior } from './hold-prior.js';
import { pullOvershoot } from './pull-overshoot.js';
import { settledBelief, TYPICAL_OVERSHOOT_PCT, type SettledBelief } from './settled-belief.js';

/** The belief about overshoot against gate hold, one entry for each curve, and about the boost it settles at. */
export interface HoldPosterior extends SettledBelief {
  readonly shapes: readonly RiseShape[];
  /** Width of the band of boost in which the gate is let go, % of target. */
  readonly jitterPct: Float64Array;
  /** Pull-to-pull scatter that has nothing to do with the hold, %². */
  readonly scatterVariance: Float64Array;
  /** Overshoot without hold, %: mean and variance given this curve and the pulls. */
  readonly basePct: Float64Array;
  readonly baseVariance: Float64Array;
  /** Share of the belief; they sum to 1. */
  readonly weight: Float64Array;
}

/** Overshoot without hold that is thought possible before any pull, %: mean and standard deviation. */
const BASE_PCT = TYPICAL_OVERSHOOT_PCT;
const BASE_SPREAD_PCT = 5;
/** Curves that hold less than this share of the best one's belief no longer count. */
const NEGLIGIBLE_LOG = Math.log(1e-6);

/** A curve on its way into the belief. */
interface Candidate {
  readonly shape: RiseShape;
  readonly jitterPct: number;
  readonly scatterVariance: number;
  readonly basePct: number;
  readonly baseVariance: number;
  readonly log: number;
}

/**
 * Belief about the overshoot of a car, given its pulls: a fixed family of curves that never fall, weighed by
 * how well each explains the pulls; the overshoot without hold is integrated out in closed form.
 *
 * A pull lets the gate go a little before or after the hold, because the controller acts once a period: that is
 * scatter along the hold, which shows in the overshoot only where the curve rises.
 *
 * Cost: some 6500 curves times the number of pulls, a few milliseconds.
 * Source: Bayes' rule on a grid, normal likelihood with a conjugate normal prior on the level (Bishop, Pattern
 * Recognition and Machine Learning, section 2.3.3); the priors are common practice, no source.
 */
export function overshootPosterior(pulls: readonly HoldPull[], targetKpa: number): HoldPosterior {
  const prior = holdPrior(pulls);
  const readings = readingsOf(pulls);
  const candidates: Candidate[] = [];
  let best = -Infinity;
  for (const shape of RISE_SHAPES) {
    const logShape = Math.log(shape.weight * prior.kneeDensity(shape.kneePct));
    for (const [multiple, jitterWeight] of JITTERS) {
      const jitterPct = multiple * prior.jitterPct;
      readRises(readings, shape, jitterPct);
      for (const [scatterPct, scatterWeight] of SCATTERS) {
        const scatterVariance = scatterPct * scatterPct;
        const level = levelOf(readings, scatterVariance);
        const log = logShape + Math.log(jitterWeight * scatterWeight) + level.log;
        if (log < best + NEGLIGIBLE_LOG) continue;
        best = Math.max(best, log);
        const { basePct, baseVariance } = level;
        candidates.push({ shape, jitterPct, scatterVariance, basePct, baseVariance, log });
      }
    }
  }
  return { ...tabulate(candidates, best), ...settledBelief(pulls, targetKpa) };
}

function tabulate(candidates: readonly Candidate[], best: number): Omit<HoldPosterior, keyof SettledBelief> {
  const kept = candidates.filter(({ log }) => log >= best + NEGLIGIBLE_LOG);
  const total = kept.reduce((sum, { log }) => sum + Math.exp(log - best), 0);
  const column = (figure: (curve: Candidate) => number): Float64Array => Float64Array.from(kept, figure);
  return {
    shapes: kept.map(({ shape }) => shape),
    jitterPct: column((curve) => curve.jitterPct),
    scatterVariance: column((curve) => curve.scatterVariance),
    basePct: column((curve) => curve.basePct),
    baseVariance: column((curve) => curve.baseVariance),
    weight: column(({ log }) => Math.exp(log - best) / total),
  };
}

/** The pulls, and what the curve at hand makes of each: its mean rise and the variance of the rise. */
interface Readings {
  readonly holdPct: Float64Array;
  readonly overshootPct: Float64Array;
  readonly risePct: Float64Array;
  readonly riseVariance: Float64Array;
}

function readingsOf(pulls: readonly HoldPull[]): Readings {
  return {
    holdPct: Float64Array.from(pulls, (pull) => pull.holdPct),
    overshootPct: Float64Array.from(pulls, pullOvershoot),
    risePct: new Float64Array(pulls.length),
    riseVariance: new Float64Array(pulls.length),
  };
}

function readRises({ holdPct, risePct, riseVariance }: Readings, shape: RiseShape, jitterPct: number): void {
  const aside = jitterPct * LET_GO_PLACE;
  for (let index = 0; index < holdPct.length; index += 1) {
    const past = (holdPct[index] ?? 0) - shape.kneePct;
    const early = riseAt(past - aside, shape.slope, shape.widthPct);
    const middle = riseAt(past, shape.slope, shape.widthPct);
    const late = riseAt(past + aside, shape.slope, shape.widthPct);
    const mean = EARLY_SHARE * (early + late) + MIDDLE_SHARE * middle;
    const square = EARLY_SHARE * (early * early + late * late) + MIDDLE_SHARE * middle * middle;
    risePct[index] = mean;
    riseVariance[index] = Math.max(0, square - mean * mean);
  }
}

function levelOf(
  { overshootPct, risePct, riseVariance }: Readings,
  scatterVariance: number,
): { basePct: number; baseVariance: number; log: number } {
  let precision = 1 / BASE_SPREAD_PCT ** 2;
  let moment = BASE_PCT * precision;
  let squares = BASE_PCT * moment;
  let product = 1;
  for (let index = 0; index < overshootPct.length; index += 1) {
    const total = scatterVariance + (riseVariance[index] ?? 0);
    const left = (overshootPct[index] ?? 0) - (risePct[index] ?? 0);
    precision += 1 / total;
    moment += left / total;
    squares += (left * left) / total;
    product *= total;
  }
  const log = -0.5 * (Math.log(product * precision) + squares - (moment * moment) / precision);
  return { basePct: moment / precision, baseVariance: 1 / precision, log };
}
