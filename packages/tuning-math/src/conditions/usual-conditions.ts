import { quantileSorted } from '../numerics/quantile-sorted.js';
import type { KnownConditions, PullConditions } from './conditions-types.js';

/** Heat soak is left at none and the gear to `fitConditions`: half a gear is not driven in. */
const MEASURED = ['gradientPct', 'intakeC', 'barometerAbsKpa'] as const;

/**
 * What pulls were usually driven in: the median of each measured condition. Use it as the reference of
 * `fitConditions`, so that peaks are brought to the weather of the proof and not to one that nobody saw.
 *
 * @param all conditions of the pulls, in any order; null where not known
 * @returns only the conditions that at least one pull knows: gradient %, intake °C, barometer absolute kPa
 * Source: common practice, no source.
 */
export function usualConditions(all: readonly PullConditions[]): Partial<KnownConditions> {
  const known = MEASURED.flatMap((field) => {
    const values = all.flatMap((conditions) => conditions[field] ?? []).sort((a, b) => a - b);
    return values.length === 0 ? [] : [[field, quantileSorted(values, 0.5)] as const];
  });
  return Object.fromEntries(known);
}
