import { coefficientRoom } from './coefficient-room.js';
import type { Explanations } from './collect-explanations.js';
import { missCoefficients } from './miss-coefficients.js';
import type { PeakPrecision } from './peak-precision.js';
import type { ProjectedMisses } from './project-misses.js';
import { FALSE_STRAY } from './response-settings.js';

/**
 * How departures from each explanation's curve follow from the pulls: for each place (a duty) a row of as many figures as
 * there are explanations, and a last row for heat. Times the covariance with each place, and of a unit of heat, they
 * sum to the departure that is expected elsewhere.
 *
 * Cost: O(explanations · (pulls + places · modes)).
 * Source: Rasmussen & Williams, Gaussian Processes for Machine Learning (2006), equation 2.25.
 */
export function explainedDepartures(
  explanations: Explanations,
  precisions: readonly PeakPrecision[],
  projected: ProjectedMisses,
): Float64Array {
  const { count } = explanations;
  const { places, heats } = projected.modes;
  const room = coefficientRoom(projected.modes);
  const ofRow = new Float64Array(heats.length);
  const departures = new Float64Array((places.count + 1) * count);
  for (let row = 0; row < count; row += 1) {
    const precision = precisions[explanations.scatters[row] as number] as PeakPrecision;
    if (!isLikeBefore(explanations, row))
      missCoefficients(projected, precision, explanations.particles[row] as number, room);
    ofRow.set(room.coefficients);
    takeAsFalse(ofRow, precision, explanations.falsePulls[row] as number);
    let perHeat = 0;
    for (let pull = 0; pull < heats.length; pull += 1) {
      const at = (places.placeOf[pull] as number) * count + row;
      departures[at] = (departures[at] as number) + (ofRow[pull] as number);
      perHeat += (ofRow[pull] as number) * (heats[pull] as number);
    }
    departures[places.count * count + row] = perHeat;
  }
  return departures;
}

/** Explanations by the same curve and scatter follow upon each other. */
function isLikeBefore({ particles, scatters }: Explanations, row: number): boolean {
  return particles[row] === particles[row - 1] && scatters[row] === scatters[row - 1];
}

/** What follows from the pulls where one of them is taken as false; -1: none. */
function takeAsFalse(row: Float64Array, { inverse, size }: PeakPrecision, falsePull: number): void {
  if (falsePull < 0) return;
  const stray = FALSE_STRAY * FALSE_STRAY;
  const widening = 1 + stray * (inverse[falsePull * size + falsePull] as number);
  const share = (stray * (row[falsePull] as number)) / widening;
  for (let i = 0; i < size; i += 1) {
    row[i] = (row[i] as number) - share * (inverse[i * size + falsePull] as number);
  }
}
