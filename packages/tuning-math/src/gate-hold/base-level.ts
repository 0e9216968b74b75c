import { LET_GO_PLACES } from './curve-family.js';
import type { HoldReadings } from './hold-readings.js';
import { TYPICAL_OVERSHOOT_PCT } from './settled-belief.js';

/** What the pulls say of the overshoot without hold if a curve is the car's, and how well the curve explains them. */
export interface BaseLevel {
  /** Mean, %, and variance, %². */
  readonly basePct: number;
  readonly baseVariance: number;
  /** Log density of the readings, up to what is the same for every curve. */
  readonly log: number;
}

/** Overshoot without hold that is thought possible before any pull, %: mean and standard deviation. */
const PRIOR_PCT = TYPICAL_OVERSHOOT_PCT;
const PRIOR_SPREAD_PCT = 5;
/** Rises that differ by no more than this, %, cannot be told apart. */
const SAME_PCT = 1e-3;

/**
 * Overshoot without hold given one curve, from the pull at the lowest hold on.
 *
 * Where the gate was let go in a pull is not seen. Each pull therefore is one of several normals, one for each place;
 * what it makes of the level is a mixture, of which mean and variance are kept before the next pull is looked at. Pulls
 * below the knee, where all places agree, come first and are exact; so the level is known well before it matters.
 *
 * Cost: one exponential a pull and place.
 * Source: assumed-density filtering (Minka, A Family of Algorithms for Approximate Bayesian Inference, 2001, chapter 3),
 * which for a single normal is the conjugate update (Bishop, Pattern Recognition and Machine Learning, section 2.3.3).
 */
export function baseLevel(readings: HoldReadings, scatterVariance: number): BaseLevel {
  const { overshootPct, risePct } = readings;
  let [basePct, baseVariance, log] = [PRIOR_PCT, PRIOR_SPREAD_PCT ** 2, 0];
  for (let pull = 0; pull < overshootPct.length; pull += 1) {
    const start = PLACES * pull;
    const left = (overshootPct[pull] ?? 0) - basePct;
    const variance = scatterVariance + baseVariance;
    const gain = baseVariance / variance;
    baseVariance *= 1 - gain;
    const lowest = risePct[start] ?? 0;
    if ((risePct[start + PLACES - 1] ?? 0) - lowest < SAME_PCT) {
      const distance = left - lowest;
      log -= 0.5 * (Math.log(variance) + (distance * distance) / variance);
      basePct += gain * distance;
      continue;
    }
    const nearest = nearestSquare(risePct, start, left);
    let [sum, first, second] = [0, 0, 0];
    for (let place = start; place < start + PLACES; place += 1) {
      const distance = left - (risePct[place] ?? 0);
      const share = Math.exp((nearest - distance * distance) / (2 * variance));
      sum += share;
      first += share * distance;
      second += share * distance * distance;
    }
    const mean = first / sum;
    log += Math.log(sum / (PLACES * Math.sqrt(variance))) - nearest / (2 * variance);
    basePct += gain * mean;
    baseVariance += gain * gain * Math.max(0, second / sum - mean * mean);
  }
  return { basePct, baseVariance, log };
}

const PLACES = LET_GO_PLACES.length;

/** Square of the distance to the place that comes nearest. */
function nearestSquare(risePct: Float64Array, start: number, left: number): number {
  let nearest = Infinity;
  for (let place = start; place < start + PLACES; place += 1) {
    const distance = left - (risePct[place] ?? 0);
    nearest = Math.min(nearest, distance * distance);
  }
  return nearest;
}
