import { expect } from 'vitest';

/** Doubles carry about 16 digits; a printed figure may end there. */
const ROUNDING_SLACK = 1e-9;

/**
 * Holds a computed figure to the digits that a source prints: it must lie within half a unit of the last one.
 * Spaces inside the figure are read over: '6.894 757'.
 */
export function expectPrinted(actual: number, printed: string): void {
  const text = printed.replaceAll(' ', '').replace('\u2212', '-');
  const [mantissa = '', exponent = '0'] = text.toLowerCase().split('e');
  const decimals = (mantissa.split('.')[1] ?? '').length;
  const halfUnit = 0.5 * 10 ** (Number(exponent) - decimals);
  const miss = Math.abs(actual - Number(text));
  expect(miss, `${actual} against the printed ${printed}`).toBeLessThanOrEqual(
    halfUnit * (1 + ROUNDING_SLACK) + Math.abs(actual) * 4 * Number.EPSILON,
  );
}
