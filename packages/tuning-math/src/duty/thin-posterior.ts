import type { Explanation } from './explain-pulls.js';
import type { ResponsePosterior } from './response-posterior.js';

/**
 * The same posterior told by fewer explanations of equal weight (systematic resampling, heaviest first), for sums
 * over the whole duty range where the far tail does not matter.
 */
export function thinPosterior(posterior: ResponsePosterior, count: number): ResponsePosterior {
  if (posterior.explanations.length <= count) return posterior;
  const size = posterior.pulls.count;
  const explanations: Explanation[] = [];
  const rows: number[] = [];
  let passed = 0;
  posterior.explanations.forEach((explanation, row) => {
    const before = Math.ceil(passed * count - 0.5);
    passed += explanation.weight;
    const copies = Math.max(Math.ceil(passed * count - 0.5), before) - before;
    if (copies === 0) return;
    explanations.push({ ...explanation, weight: copies / count });
    rows.push(row);
  });
  const coefficients = new Float64Array(explanations.length * size);
  rows.forEach((row, index) =>
    coefficients.set(posterior.coefficients.subarray(row * size, (row + 1) * size), index * size),
  );
  return { ...posterior, explanations: rescaled(explanations), coefficients };
}

function rescaled(explanations: readonly Explanation[]): Explanation[] {
  const total = explanations.reduce((sum, { weight }) => sum + weight, 0);
  return explanations.map((explanation) => ({ ...explanation, weight: explanation.weight / total }));
}
