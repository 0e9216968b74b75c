import { baseLevel } from './base-level.js';
import { JITTERS, RISE_SHAPES, SCATTERS, type RiseShape } from './curve-family.js';
import type { HoldPull } from './gate-hold-types.js';
import { holdPrior } from './hold-prior.js';
import { holdReadings, readRises } from './hold-readings.js';
import { settledBelief, type SettledBelief } from './settled-belief.js';

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
 * how well each explains the pulls; the overshoot without hold is integrated out (`baseLevel`).
 *
 * A pull lets the gate go a little before or after the hold, because the controller acts once a period: that is
 * scatter along the hold, which shows in the overshoot only where the curve rises. Each pull is taken as let go at one
 * place of that band, not as a normal about their mean: a car that has let go early by luck so far looks quiet, and a
 * normal would take that for proof that it is.
 *
 * Cost: some 7800 curves times the number of pulls, some ten milliseconds.
 * Source: Bayes' rule on a grid; the priors are common practice, no source.
 */
export function overshootPosterior(pulls: readonly HoldPull[], targetKpa: number): HoldPosterior {
  const prior = holdPrior(pulls);
  const readings = holdReadings(pulls);
  const candidates: Candidate[] = [];
  let best = -Infinity;
  for (const shape of RISE_SHAPES) {
    const logShape = Math.log(shape.weight * prior.kneeDensity(shape.kneePct));
    for (const [multiple, jitterWeight] of JITTERS) {
      const jitterPct = multiple * prior.jitterPct;
      readRises(readings, shape, jitterPct);
      for (const [scatterPct, scatterWeight] of SCATTERS) {
        const scatterVariance = scatterPct * scatterPct;
        const level = baseLevel(readings, scatterVariance);
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
