import { coefficientRoom } from './coefficient-room.js';
import { missCoefficients } from './miss-coefficients.js';
import { dutyCovariance, heatCovariance } from './peak-covariance.js';
import type { PeakPrecision } from './peak-precision.js';
import type { PeakSpreads } from './peak-mixture.js';
import { projectMisses } from './project-misses.js';
import { FALSE_STRAY, SCATTERS } from './response-settings.js';
import type { ResponsePosterior } from './response-posterior.js';

/** Variances below this are rounding, not knowledge. */
const LEAST_VARIANCE = 1e-10;
const STRAY_SQUARE = FALSE_STRAY * FALSE_STRAY;

/**
 * How well the pulls tell the peak at a duty, as hot as the car is for the next pull; worked out once for each duty.
 *
 * Cost: O(scatters · (pulls + places · modes)) the first time.
 * Source: Rasmussen & Williams, Gaussian Processes for Machine Learning (2006), equation 2.26; a false pull by Sherman &
 * Morrison, Ann. Math. Stat. 21 (1950).
 */
export function peakSpreads(posterior: ResponsePosterior, duty: number): PeakSpreads {
  const known = posterior.spreads.get(duty);
  if (known) return known;
  const { precisions, pulls, modes } = posterior;
  const width = pulls.count + 1;
  const links = linksTo(posterior, duty);
  const own = dutyCovariance(duty, duty) + heatCovariance(pulls.nextHeat, pulls.nextHeat);
  const projected = projectMisses(links, 1, modes);
  const room = coefficientRoom(modes);
  const spreads = {
    meanSpreads: new Float64Array(precisions.length * width),
    peakSpreads: new Float64Array(precisions.length * width),
  };
  precisions.forEach((precision, scatter) => {
    missCoefficients(projected, precision, 0, room);
    const noise = (SCATTERS[scatter] as number) ** 2;
    meanVariances(precision, { links, coefficients: room.coefficients, own }).forEach((found, which) => {
      const variance = Math.max(found, LEAST_VARIANCE);
      spreads.meanSpreads[scatter * width + which] = Math.sqrt(variance);
      spreads.peakSpreads[scatter * width + which] = Math.sqrt(variance + noise);
    });
  });
  posterior.spreads.set(duty, spreads);
  return spreads;
}

/** Covariance of the peak at a duty with each pull. */
function linksTo({ pulls, modes }: ResponsePosterior, duty: number): Float64Array {
  const atPlaces = modes.places.duties.map((other) => dutyCovariance(duty, other));
  return pulls.heats.map((heat, pull) => {
    return (atPlaces[modes.places.placeOf[pull] as number] as number) + heatCovariance(pulls.nextHeat, heat);
  });
}

interface Told {
  readonly links: Float64Array;
  /** The precision times the links. */
  readonly coefficients: Float64Array;
  readonly own: number;
}

function meanVariances({ inverse, size }: PeakPrecision, { links, coefficients, own }: Told): Float64Array {
  const variances = new Float64Array(size + 1);
  let plain = own;
  for (let j = 0; j < size; j += 1) plain -= (coefficients[j] as number) * (links[j] as number);
  variances[0] = plain;
  for (let j = 0; j < size; j += 1) {
    const lost = STRAY_SQUARE / (1 + STRAY_SQUARE * (inverse[j * size + j] as number));
    variances[j + 1] = plain + (coefficients[j] as number) ** 2 * lost;
  }
  return variances;
}
