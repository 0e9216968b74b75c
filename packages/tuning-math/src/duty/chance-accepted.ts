import { normalCdf } from '../numerics/normal-cdf.js';
import { ACCEPT_CONFIDENCE } from './decision-settings.js';
import type { DutySituation } from './duty-situation.js';
import type { PeakMixture } from './peak-mixture.js';

const HALVINGS = 12;
const LEAST_VARIANCE = 1e-10;

/**
 * Chance that one more pull at a duty gives the confidence to accept it, by the first two moments of what is expected
 * there: the reading moves the mean by a known spread, and narrows it to a known width.
 *
 * Source: pre-posterior analysis of a normal mean; Raiffa & Schlaifer, Applied Statistical Decision Theory (1961), ch. 5.
 */
export function chanceAccepted(mixture: PeakMixture, { low, high }: DutySituation['levels']): number {
  const { mean, variance, noise } = momentsOf(mixture);
  const after = (variance * noise) / (variance + noise);
  const reach = acceptedReach((high - low) / 2, Math.sqrt(after));
  if (reach < 0) return 0;
  const move = Math.sqrt(Math.max(variance - after, LEAST_VARIANCE));
  const middle = (high + low) / 2;
  return normalCdf((middle + reach - mean) / move) - normalCdf((middle - reach - mean) / move);
}

function momentsOf({ weights, centres, places, meanSpreads, peakSpreads }: PeakMixture): {
  mean: number;
  variance: number;
  noise: number;
} {
  let mean = 0;
  let square = 0;
  let noise = LEAST_VARIANCE;
  for (let row = 0; row < weights.length; row += 1) {
    const weight = weights[row] as number;
    const centre = centres[row] as number;
    const place = places[row] as number;
    const own = (meanSpreads[place] as number) ** 2;
    mean += weight * centre;
    square += weight * (centre * centre + own);
    noise += weight * ((peakSpreads[place] as number) ** 2 - own);
  }
  return { mean, variance: Math.max(square - mean * mean, LEAST_VARIANCE), noise };
}

/** How far from the middle of the tolerance a mean known to this spread may lie and be accepted; -1 if nowhere. */
function acceptedReach(half: number, spread: number): number {
  const inside = (away: number): number =>
    normalCdf((half - away) / spread) - normalCdf((-half - away) / spread);
  if (inside(0) < ACCEPT_CONFIDENCE) return -1;
  let reach = 0;
  let beyond = half;
  for (let halving = 0; halving < HALVINGS; halving += 1) {
    const away = (reach + beyond) / 2;
    if (inside(away) >= ACCEPT_CONFIDENCE) reach = away;
    else beyond = away;
  }
  return reach;
}
