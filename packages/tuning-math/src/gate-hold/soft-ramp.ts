/** Past so much to either side the ramp is straight to 1e-7. */
const REACH = 16;
const PER_UNIT = 128;

let table: Float64Array | undefined;

/**
 * log(1 + exp(x)): level far below 0, x far above, with a bend of width 1 between, from a table with linear
 * interpolation (absolute error below 2e-6), for belief over thousands of curves where `Math.exp` and `Math.log1p`
 * would take most of a decision's time.
 */
export function softRamp(x: number): number {
  if (x >= REACH) return x;
  if (x <= -REACH) return 0;
  table ??= buildTable();
  const position = (x + REACH) * PER_UNIT;
  const index = Math.floor(position);
  const low = table[index] ?? 0;
  return low + ((table[index + 1] ?? low) - low) * (position - index);
}

function buildTable(): Float64Array {
  return Float64Array.from({ length: 2 * REACH * PER_UNIT + 2 }, (_, index) =>
    Math.log1p(Math.exp(index / PER_UNIT - REACH)),
  );
}
