import { Matrix, solve } from 'ml-matrix';
import type { Series } from '../filter/series.js';

/** A swing that dies away: what is left of a closed loop's answer once its target stands still. */
export interface FittedSwing {
  /** Frequency of the swing as it is seen (the damped one), Hz. */
  readonly frequencyHz: number;
  /** 0 or more; a swing that grows counts as not damped. */
  readonly dampingRatio: number;
}

const LOWEST_HZ = 0.3;
const HIGHEST_HZ = 8;
const SCAN_RATIO = 1.12;
const SCAN_DAMPINGS = [0.02, 0.1, 0.25];
const HIGHEST_DAMPING = 0.9;
const LOWEST_DAMPING = -0.05;
/** Refined to this share of the frequency and this much of damping. */
const FINEST_STEP = 5e-4;
const LEAST_SAMPLES = 12;
/** At least this many periods must lie in the stretch, or trend and swing cannot be told apart. */
const LEAST_PERIODS = 1.2;

/**
 * Frequency and damping ratio of boost that swings about a slow trend: least squares of a parabola in time plus
 * exp(-z w t) (c cos w_d t + s sin w_d t), w_d = w sqrt(1 - z²). Level, trend, c and s are linear and solved for
 * at each frequency and damping (variable projection); those two are scanned and then refined.
 *
 * @param series boost from its first turning point to the end of the pull, s and kPa
 * @returns null for fewer than twelve samples
 * Cost: some 250 solutions of five unknowns over the samples, a few milliseconds.
 * Source: Golub & Pereyra, SIAM J. Numer. Anal. 10 (1973) 413-432, variable projection (from memory); the form of
 * the swing is the free response of a second-order system (Ogata, Modern Control Engineering, section 5.3).
 */
export function fitSwing({ timeS, values }: Series): FittedSwing | null {
  if (values.length < LEAST_SAMPLES) return null;
  const startS = timeS[0] ?? 0;
  const spanS = (timeS.at(-1) ?? 0) - startS;
  const since = timeS.map((time) => time - startS);
  const lowestHz = Math.max(LOWEST_HZ, LEAST_PERIODS / spanS);
  const costAt = (frequencyHz: number, damping: number): number =>
    leftSquares(since, values, { frequencyHz, damping, spanS });
  let best = { frequencyHz: lowestHz, damping: 0, cost: Infinity };
  for (let frequencyHz = lowestHz; frequencyHz < HIGHEST_HZ; frequencyHz *= SCAN_RATIO) {
    for (const damping of SCAN_DAMPINGS) {
      const cost = costAt(frequencyHz, damping);
      if (cost < best.cost) best = { frequencyHz, damping, cost };
    }
  }
  const { frequencyHz, damping } = refine(best, costAt);
  return { frequencyHz, dampingRatio: Math.max(0, damping) };
}

interface Guess {
  readonly frequencyHz: number;
  readonly damping: number;
  readonly cost: number;
}

/** Pattern search: a step up or down in either direction while it helps, then half the step. */
function refine(start: Guess, costAt: (frequencyHz: number, damping: number) => number): Guess {
  let best = start;
  let step = SCAN_RATIO - 1;
  while (step > FINEST_STEP) {
    const tried = [
      [best.frequencyHz * (1 + step), best.damping],
      [best.frequencyHz / (1 + step), best.damping],
      [best.frequencyHz, Math.min(HIGHEST_DAMPING, best.damping + step)],
      [best.frequencyHz, Math.max(LOWEST_DAMPING, best.damping - step)],
    ].map(([frequencyHz = 0, damping = 0]) => ({ frequencyHz, damping, cost: costAt(frequencyHz, damping) }));
    const better = tried.reduce((low, guess) => (guess.cost < low.cost ? guess : low), best);
    if (better === best) step /= 2;
    best = better;
  }
  return best;
}

const TERMS = 5;

/** Sum of squares that the best linear part leaves, kPa². */
function leftSquares(
  since: Float64Array,
  values: Float64Array,
  { frequencyHz, damping, spanS }: { frequencyHz: number; damping: number; spanS: number },
): number {
  const angular = 2 * Math.PI * frequencyHz;
  const decay = (damping * angular) / Math.sqrt(1 - damping * damping);
  const normal = Matrix.zeros(TERMS, TERMS);
  const moment = new Array<number>(TERMS).fill(0);
  let squares = 0;
  for (let index = 0; index < values.length; index += 1) {
    const time = since[index] ?? 0;
    const value = values[index] ?? 0;
    const share = (2 * time) / spanS - 1;
    const size = Math.exp(-decay * time);
    const terms = [1, share, share * share, size * Math.cos(angular * time), size * Math.sin(angular * time)];
    squares += value * value;
    for (let row = 0; row < TERMS; row += 1) {
      moment[row] = (moment[row] ?? 0) + (terms[row] ?? 0) * value;
      for (let column = 0; column < TERMS; column += 1)
        normal.set(row, column, normal.get(row, column) + (terms[row] ?? 0) * (terms[column] ?? 0));
    }
  }
  const linear = solve(normal, Matrix.columnVector(moment)).to1DArray();
  return squares - linear.reduce((sum, value, row) => sum + value * (moment[row] ?? 0), 0);
}
