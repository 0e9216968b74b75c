/** A stretch of values; `low` < `high`. */
export interface Span {
  readonly low: number;
  readonly high: number;
}

/** A pressure, or a duty, to where it is drawn. */
export type Scale = (value: number) => number;

/**
 * Straight-line map of `domain` onto start..end; values outside go on beyond the ends.
 * Works in halves, so that spans near the largest number do not overflow.
 */
export function linearScale(domain: Span, start: number, end: number): Scale {
  const span = domain.high / 2 - domain.low / 2;
  return (value) => start + ((value / 2 - domain.low / 2) / span) * (end - start);
}
