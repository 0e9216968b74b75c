import { normalCdf } from '../numerics/normal-cdf.js';
import type { HoldPull } from './gate-hold-types.js';

/** One way in which overshoot may answer to gate hold: level up to a knee, then rising. */
export interface OvershootCurve {
  /** Overshoot that is there without any hold, %. */
  readonly basePct: number;
  /** Hold from which it rises, % of target. */
  readonly kneePct: number;
  /** Mean rise over the 10 points past the knee, % overshoot a point. */
  readonly slope: number;
  /** 0 jumps at the knee, 1 rises straight, 2 ever steeper. */
  readonly power: 0 | 1 | 2;
  /** Pull-to-pull scatter of the overshoot, %. */
  readonly scatterPct: number;
  /** Share of the belief. */
  readonly weight: number;
}

/** The belief about overshoot against gate hold, and about the boost it settles at. */
export interface HoldPosterior {
  readonly curves: readonly OvershootCurve[];
  /** Mean of the settled boost and the scatter of a further one, kPa. */
  readonly settledKpa: number;
  readonly settledScatterKpa: number;
  /** Uncertainty of that mean, kPa. */
  readonly settledErrorKpa: number;
}

/** Overshoot without hold that is thought possible before any pull, %, and how likely. */
const COMMON_BASES = [0, 0.6, 1.4, 2.6, 4.5, 8];
const COMMON_WEIGHTS = [1, 1, 0.9, 0.5, 0.25, 0.1];
/** Once pulls are there: what the lowest hold showed, give or take this much. */
const SEEN_OFFSETS = [-1.2, -0.5, 0, 0.5, 1.2];
const SLOPES = [0.06, 0.12, 0.22, 0.4, 0.7, 1.2, 2];
const SCATTERS = [0.3, 0.7, 1.5];
const SCATTER_WEIGHTS = [1, 0.9, 0.3];
const POWERS = [0, 1, 2] as const;
/** Jumps are rarer than slopes. */
const POWER_WEIGHTS = [0.3, 1, 0.7];
/** A jump is as high as a straight rise gets in this many points. */
const JUMP_POINTS = 8;
const KNEE_STEP = 4;
/** A knee past 120 % of target means that hold does nothing within any controller's range. */
const HIGHEST_KNEE = 120;
const LOWEST_KNEE = 8;
/** Overshoot scatters more where there is more of it: by this share of the rise above the base. */
const PROPORTIONAL_SCATTER = 0.12;
/** Curves that hold less than this share of the best one's belief no longer count. */
const NEGLIGIBLE = 1e-5;
/** Common practice: peaks scatter by somewhat over 1 %; worth this many pulls. */
const PRIOR_SCATTER_RATIO = 0.012;
const PRIOR_PULLS = 4;

/**
 * Belief about the overshoot of a car, given its pulls: a fixed family of curves that never fall, weighed by
 * how well each explains the pulls.
 *
 * Cost: some 6000 curves times the number of pulls.
 * Source: Bayes' rule on a grid; the priors are common practice, no source.
 */
export function overshootPosterior(pulls: readonly HoldPull[], targetKpa: number): HoldPosterior {
  const logs: number[] = [];
  const family = curveFamily(possibleBases(pulls));
  let best = -Infinity;
  for (const curve of family) {
    const log = Math.log(curve.weight) + logLikelihood(curve, pulls);
    best = Math.max(best, log);
    logs.push(log);
  }
  const kept = family
    .map((curve, index) => ({ ...curve, weight: Math.exp((logs[index] ?? -Infinity) - best) }))
    .filter((curve) => curve.weight > NEGLIGIBLE);
  const total = kept.reduce((sum, curve) => sum + curve.weight, 0);
  const curves = kept.map((curve) => ({ ...curve, weight: curve.weight / total }));
  return { curves, ...settledBelief(pulls, targetKpa) };
}

/** Mean overshoot of a curve at a hold, %. */
export function meanOvershoot(curve: OvershootCurve, holdPct: number): number {
  const past = Math.max(0, holdPct - curve.kneePct);
  if (past === 0) return curve.basePct;
  const rise = curve.power === 0 ? JUMP_POINTS : curve.power === 1 ? past : (past * past) / 10;
  return curve.basePct + curve.slope * rise;
}

/** Scatter of single pulls around that mean, %. */
export function overshootScatter(curve: OvershootCurve, holdPct: number): number {
  const rise = meanOvershoot(curve, holdPct) - curve.basePct;
  const grown = PROPORTIONAL_SCATTER * rise;
  return Math.sqrt(curve.scatterPct * curve.scatterPct + grown * grown);
}

/** Overshoot of a pull, (peak - settled) / settled, %. */
export function pullOvershoot(pull: HoldPull): number {
  return (100 * (pull.peakKpa - pull.settledKpa)) / pull.settledKpa;
}

/** Chance that the true mean overshoot at a hold is over a limit. */
export function probabilityMeanOver({ curves }: HoldPosterior, holdPct: number, limitPct: number): number {
  let over = 0;
  for (const curve of curves) if (meanOvershoot(curve, holdPct) > limitPct) over += curve.weight;
  return over;
}

/** Chance that the peak of a further pull at a hold is over a level, kPa. */
export function probabilityPeakOver(posterior: HoldPosterior, holdPct: number, levelKpa: number): number {
  const { settledKpa, settledScatterKpa } = posterior;
  let over = 0;
  for (const curve of posterior.curves) {
    const factor = 1 + meanOvershoot(curve, holdPct) / 100;
    const fromSettled = settledScatterKpa * factor;
    const fromOvershoot = (settledKpa * overshootScatter(curve, holdPct)) / 100;
    const scatter = Math.sqrt(fromSettled * fromSettled + fromOvershoot * fromOvershoot);
    over += curve.weight * normalCdf((settledKpa * factor - levelKpa) / scatter);
  }
  return over;
}

function possibleBases(pulls: readonly HoldPull[]): { basePct: number; weight: number }[] {
  const common = COMMON_BASES.map((basePct, index) => ({ basePct, weight: COMMON_WEIGHTS[index] ?? 0 }));
  const lowest = Math.min(...pulls.map((pull) => pull.holdPct));
  const seen = pulls.filter((pull) => pull.holdPct === lowest).map(pullOvershoot);
  if (seen.length === 0) return common;
  const mean = seen.reduce((sum, value) => sum + value, 0) / seen.length;
  return [...common, ...SEEN_OFFSETS.map((offset) => ({ basePct: mean + offset, weight: 1 }))];
}

function curveFamily(bases: readonly { basePct: number; weight: number }[]): OvershootCurve[] {
  const family: OvershootCurve[] = [];
  for (let kneePct = LOWEST_KNEE; kneePct <= HIGHEST_KNEE; kneePct += KNEE_STEP) {
    for (const base of bases) {
      SCATTERS.forEach((scatterPct, s) => {
        POWERS.forEach((power, p) => {
          const weight = base.weight * (SCATTER_WEIGHTS[s] ?? 0) * (POWER_WEIGHTS[p] ?? 0);
          for (const slope of SLOPES) {
            family.push({ basePct: base.basePct, kneePct, slope, power, scatterPct, weight });
          }
        });
      });
    }
  }
  return family;
}

function logLikelihood(curve: OvershootCurve, pulls: readonly HoldPull[]): number {
  let log = 0;
  for (const pull of pulls) {
    const scatter = overshootScatter(curve, pull.holdPct);
    const miss = (pullOvershoot(pull) - meanOvershoot(curve, pull.holdPct)) / scatter;
    // A Cauchy-like shoulder, so that one spoilt reading does not throw out every curve.
    log -= Math.log(scatter) + 3 * Math.log1p((miss * miss) / 5);
  }
  return log;
}

function settledBelief(
  pulls: readonly HoldPull[],
  targetKpa: number,
): Pick<HoldPosterior, 'settledKpa' | 'settledScatterKpa' | 'settledErrorKpa'> {
  const count = pulls.length;
  const settledKpa = count === 0 ? targetKpa : pulls.reduce((sum, pull) => sum + pull.settledKpa, 0) / count;
  const squares = pulls.reduce((sum, pull) => sum + (pull.settledKpa - settledKpa) ** 2, 0);
  const prior = PRIOR_PULLS * (PRIOR_SCATTER_RATIO * targetKpa) ** 2;
  const variance = (prior + squares) / (PRIOR_PULLS + Math.max(0, count - 1));
  // Without any pull the duty advice has only put the peak near the target: leave room for as much again.
  const settledErrorKpa = Math.sqrt(variance / Math.max(1, count));
  return { settledKpa, settledErrorKpa, settledScatterKpa: Math.hypot(Math.sqrt(variance), settledErrorKpa) };
}
