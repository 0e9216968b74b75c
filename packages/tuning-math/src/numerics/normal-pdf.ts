import { requireNumber } from '../require-number.js';

const INVERSE_ROOT_TWO_PI = 0.3989422804014327;

/**
 * Density of the standard normal distribution.
 *
 * @param z finite
 * @returns density, 0 or more
 * @throws NotFiniteError
 * @example normalPdf(0) // 0.3989422804014327
 */
export function normalPdf(z: number): number {
  requireNumber('normalPdf', 'z', z);
  return INVERSE_ROOT_TWO_PI * Math.exp(-0.5 * z * z);
}
