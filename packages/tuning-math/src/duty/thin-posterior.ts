import { explainedCurves } from './explained-curves.js';
import { resample } from './resample.js';
import type { ResponsePosterior } from './response-posterior.js';

/** The same posterior told by fewer explanations, for sums over the whole duty range where the far tail does not matter. */
export function thinPosterior(posterior: ResponsePosterior, count: number): ResponsePosterior {
  const { explanations, departures, modes, pulls } = posterior;
  if (explanations.count <= count) return posterior;
  const { rows, shares } = resample(explanations.weights, count);
  const kept = new Float64Array(rows.length * (modes.places.count + 1));
  for (let place = 0; place <= modes.places.count; place += 1) {
    for (let index = 0; index < rows.length; index += 1) {
      const row = rows[index] as number;
      kept[place * rows.length + index] = departures[place * explanations.count + row] as number;
    }
  }
  const thinned = {
    count: rows.length,
    particles: Int32Array.from(rows, (row) => explanations.particles[row] as number),
    scatters: Uint8Array.from(rows, (row) => explanations.scatters[row] as number),
    falsePulls: Int16Array.from(rows, (row) => explanations.falsePulls[row] as number),
    weights: shares,
  };
  return {
    ...posterior,
    departures: kept,
    explanations: thinned,
    curves: explainedCurves(posterior.particles, thinned, pulls.count),
    mixtures: new Map(),
  };
}
