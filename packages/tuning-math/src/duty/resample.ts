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
  const rows = new Int32Array(2 * count + 1);
  const shares = new Float64Array(2 * count + 1);
  let chosen = 0;
  let sum = 0;
  let passed = 0.5 * part;
  for (let row = 0; row < weights.length; row += 1) {
    const weight = weights[row] as number;
    const isHeavy = weight >= part;
    if (!isHeavy) {
      passed += weight;
      if (passed < part) continue;
      passed -= part;
    }
    rows[chosen] = row;
    shares[chosen] = isHeavy ? weight / total : 1 / count;
    sum += shares[chosen] as number;
    chosen += 1;
  }
  const kept = shares.subarray(0, chosen);
  for (let index = 0; index < chosen; index += 1) kept[index] = (kept[index] as number) / sum;
  return { rows: rows.subarray(0, chosen), shares: kept };
}
