import { matrixTimes } from './matrix-times.js';
import type { PeakPrecision } from './peak-precision.js';
import type { ProjectedMisses } from './project-misses.js';

/**
 * Precision times the misses of one curve: how departures from it follow from each pull.
 *
 * @param coefficients filled: a figure for each pull
 * Cost: O(pulls + places · modes).
 */
export function missCoefficients(
  { modes, misses, alongModes }: ProjectedMisses,
  { trust, modeLosses }: PeakPrecision,
  curve: number,
  coefficients: Float64Array,
): void {
  const { count, heats, places, byPlace } = modes;
  const lost = modeLosses.map((loss, mode) => loss * (alongModes[curve * count + mode] as number));
  const atPlaces = new Float64Array(places.count + 1);
  matrixTimes(byPlace, lost, 0, atPlaces);
  const perHeat = atPlaces[places.count] as number;
  const start = curve * heats.length;
  for (let pull = 0; pull < heats.length; pull += 1) {
    const departure =
      (atPlaces[places.placeOf[pull] as number] as number) + perHeat * (heats[pull] as number);
    coefficients[pull] = trust * (misses[start + pull] as number) - departure;
  }
}
