import { requireNumber } from '../require-number.js';
import { DEFAULT_CEILING_MARGINS } from './build-ceiling.js';

/**
 * The lowest over-boost cut that lets a ceiling stand: the other way round of `buildCeiling` with `ceilingMargins`.
 * Use it where the ceiling is agreed and the cut is to be set.
 *
 * @param ceilingKpa gauge, above 0 up to 900
 * @returns kPa gauge, the usual margin above the ceiling; twice a ceiling that is lower than that margin
 * @throws NotFiniteError, OutOfRangeError
 * Source: common practice, no source.
 * @example leastOverBoostCut(155) // 160 kPa
 */
export function leastOverBoostCut(ceilingKpa: number): number {
  requireNumber('leastOverBoostCut', 'ceilingKpa', ceilingKpa, { min: 0, max: 900, exclusive: true });
  return ceilingKpa + Math.min(DEFAULT_CEILING_MARGINS.overBoostCutKpa, ceilingKpa);
}
