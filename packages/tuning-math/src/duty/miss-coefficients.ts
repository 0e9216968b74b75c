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
  const { count, heats, byPlace } = modes;
  const { placeOf, count: placeCount } = modes.places;
  const lost = new Float64Array(count);
  for (let mode = 0; mode < count; mode += 1)
    lost[mode] = (modeLosses[mode] as number) * (alongModes[curve * count + mode] as number);
  const atPlaces = new Float64Array(placeCount + 1);
  matrixTimes(byPlace, lost, 0, atPlaces);
  const perHeat = atPlaces[placeCount] as number;
  const start = curve * heats.length;
  for (let pull = 0; pull < heats.length; pull += 1) {
    const departure = (atPlaces[placeOf[pull] as number] as number) + perHeat * (heats[pull] as number);
    coefficients[pull] = trust * (misses[start + pull] as number) - departure;
  }
}
