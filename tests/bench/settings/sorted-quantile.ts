import { quantileSorted } from '@pullbook/tuning-math';

/** Quantile of figures in any order; NaN for none, which prints as such. */
export function quantileOf(values: readonly number[], share: number): number {
  if (values.length === 0) return NaN;
  return quantileSorted(
    [...values].sort((a, b) => a - b),
    share,
  );
}
