/** The value below which a share of the values lies; 0 where there are none. */
export function quantile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((one, other) => one - other);
  return sorted[Math.min(Math.floor(share * sorted.length), sorted.length - 1)] ?? 0;
}
