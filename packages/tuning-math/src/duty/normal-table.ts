import { normalCdf } from '../numerics/normal-cdf.js';

const REACH = 8;
const PER_UNIT = 256;

let table: Float64Array | undefined;

/**
 * Standard normal distribution function from a table with linear interpolation (absolute error below 1e-6), for
 * sums over thousands of curves where `normalCdf` would take most of a decision's time.
 */
export function normalShareBelow(z: number): number {
  if (z >= REACH) return 1;
  if (z <= -REACH) return 0;
  table ??= buildTable();
  const position = (z + REACH) * PER_UNIT;
  const index = Math.floor(position);
  const low = table[index] ?? 0;
  return low + ((table[index + 1] ?? 1) - low) * (position - index);
}

function buildTable(): Float64Array {
  return Float64Array.from({ length: 2 * REACH * PER_UNIT + 2 }, (_, index) =>
    normalCdf(index / PER_UNIT - REACH),
  );
}
