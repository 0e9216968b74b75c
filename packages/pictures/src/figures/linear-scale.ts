/** A stretch of values; `low` < `high`. */
export interface Span {
  readonly low: number;
  readonly high: number;
}

/** A pressure, or a duty, to where it is drawn. */
export type Scale = (value: number) => number;

/** So many spans off nothing is drawn any more. */
const FAR = 1e6;

/**
 * Straight-line map of `domain` onto start..end; values outside go on beyond the ends.
 * Works in halves, and ends a million spans away, so that no figure overflows.
 */
export function linearScale(domain: Span, start: number, end: number): Scale {
  const span = domain.high / 2 - domain.low / 2;
  return (value) => {
    const share = (value / 2 - domain.low / 2) / span;
    return start + Math.min(FAR, Math.max(-FAR, share)) * (end - start);
  };
}
