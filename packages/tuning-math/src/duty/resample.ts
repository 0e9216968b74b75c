/** Chosen rows, each once, and their shares, which sum to 1. */
export interface Resampled {
  readonly rows: Int32Array;
  readonly shares: Float64Array;
}

/**
 * Few rows that stand for many: those heavier than one part in `count` stay as they are, the others are drawn
 * systematically in proportion to their weight and then all weigh the same. Deterministic, unbiased in its draws.
 *
 * @param weights at least one, none negative, any scale
 * Source: Fearnhead & Clifford, J. R. Stat. Soc. B 65 (2003), 887, the threshold set at 1 / count.
 */
export function resample(weights: Float64Array, count: number): Resampled {
  let total = 0;
  for (const weight of weights) total += weight;
  const part = total / count;
  const rows: number[] = [];
  const kept: number[] = [];
  let passed = 0.5 * part;
  weights.forEach((weight, row) => {
    if (weight >= part) {
      rows.push(row);
      kept.push(weight / total);
      return;
    }
    passed += weight;
    if (passed < part) return;
    passed -= part;
    rows.push(row);
    kept.push(1 / count);
  });
  const shares = Float64Array.from(kept);
  const sum = shares.reduce((running, share) => running + share, 0);
  return { rows: Int32Array.from(rows), shares: shares.map((share) => share / sum) };
}
