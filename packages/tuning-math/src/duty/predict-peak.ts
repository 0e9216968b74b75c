import { explainedLogs } from './explained-curves.js';
import { normalShareBelow } from './normal-table.js';
import type { PeakMixture } from './peak-mixture.js';
import { peakSpreads } from './peak-spreads.js';
import { dutyCovariance, heatCovariance } from './peak-covariance.js';
import type { ResponsePosterior } from './response-posterior.js';

/**
 * What the posterior expects at a duty, as hot as the car is for the next pull; worked out once for each duty.
 *
 * Cost: O(explanations · places) the first time.
 */
export function predictPeak(posterior: ResponsePosterior, duty: number): PeakMixture {
  const known = posterior.mixtures.get(duty);
  if (known) return known;
  const { explanations, curves } = posterior;
  const logs = explainedLogs(curves, duty);
  const centres = departuresAt(posterior, duty);
  for (let row = 0; row < explanations.count; row += 1)
    centres[row] = (logs[curves.curveOf[row] as number] as number) + (centres[row] as number);
  const mixture = {
    weights: explanations.weights,
    centres,
    places: curves.spreadPlaces,
    ...peakSpreads(posterior, duty),
  };
  posterior.mixtures.set(duty, mixture);
  return mixture;
}

/** How far each explanation expects the peak from its curve, log. */
function departuresAt(
  { departures, explanations, modes, pulls }: ResponsePosterior,
  duty: number,
): Float64Array {
  const { count } = explanations;
  const sums = new Float64Array(count);
  for (let place = 0; place <= modes.places.count; place += 1) {
    const other = modes.places.duties[place];
    const link = other === undefined ? heatCovariance(pulls.nextHeat, 1) : dutyCovariance(duty, other);
    const from = place * count;
    for (let row = 0; row < count; row += 1)
      sums[row] = (sums[row] as number) + (departures[from + row] as number) * link;
  }
  return sums;
}

/** Chance that the next reading is above a level (log of peak over target). */
export function chancePeakAbove(
  { weights, centres, places, peakSpreads }: PeakMixture,
  level: number,
): number {
  let chance = 0;
  for (let row = 0; row < weights.length; row += 1) {
    const away = ((centres[row] as number) - level) / (peakSpreads[places[row] as number] as number);
    chance += (weights[row] as number) * normalShareBelow(away);
  }
  return chance;
}

/** Chance that the car's mean is below a level (log of peak over target). */
export function chanceMeanBelow(
  { weights, centres, places, meanSpreads }: PeakMixture,
  level: number,
): number {
  let chance = 0;
  for (let row = 0; row < weights.length; row += 1) {
    const away = (level - (centres[row] as number)) / (meanSpreads[places[row] as number] as number);
    chance += (weights[row] as number) * normalShareBelow(away);
  }
  return chance;
}
