import type { Span } from './linear-scale.js';

/** Room at each end, as a share of the span. */
const ROOM = 0.06;
/** No scale is narrower than this share of its figures: below it doubles run out of digits. */
const LEAST_SHARE = 1e-6;

/**
 * The span that shows all values with a little room at each end, clamped to what a double can hold.
 *
 * @param values at least one finite number
 * @param leastSpan the span is never narrower than this, > 0
 */
export function spanOf(values: readonly number[], leastSpan: number): Span {
  const lowest = values.reduce((least, value) => Math.min(least, value), Number.POSITIVE_INFINITY);
  const highest = values.reduce((most, value) => Math.max(most, value), Number.NEGATIVE_INFINITY);
  const needed = Math.max(leastSpan, Math.abs(lowest) * LEAST_SHARE, Math.abs(highest) * LEAST_SHARE);
  const half = Math.max(highest / 2 - lowest / 2, needed / 2);
  const missing = half - (highest / 2 - lowest / 2);
  const room = 2 * half * ROOM;
  return {
    low: Math.max(-Number.MAX_VALUE, lowest - missing - room),
    high: Math.min(Number.MAX_VALUE, highest + missing + room),
  };
}
