import type { CoefficientRoom } from './coefficient-room.js';
import { matrixTimes } from './matrix-times.js';
import type { PeakPrecision } from './peak-precision.js';
import type { ProjectedMisses } from './project-misses.js';

/**
 * Precision times the misses of one curve, into the room's coefficients: how departures from it follow from each pull.
 *
 * Cost: O(pulls + places · modes).
 */
export function missCoefficients(
  { modes, misses, alongModes }: ProjectedMisses,
  { trust, modeLosses }: PeakPrecision,
  curve: number,
  { lost, atPlaces, coefficients }: CoefficientRoom,
): void {
  const { count, heats, byPlace } = modes;
  const { placeOf, count: placeCount } = modes.places;
  for (let mode = 0; mode < count; mode += 1)
    lost[mode] = (modeLosses[mode] as number) * (alongModes[curve * count + mode] as number);
  matrixTimes(byPlace, lost, 0, atPlaces);
  const perHeat = atPlaces[placeCount] as number;
  const start = curve * heats.length;
  for (let pull = 0; pull < heats.length; pull += 1) {
    const departure = (atPlaces[placeOf[pull] as number] as number) + perHeat * (heats[pull] as number);
    coefficients[pull] = trust * (misses[start + pull] as number) - departure;
  }
}
