import { expect, test } from 'vitest';
import { formatPressureBound } from './format-pressure-bound.js';

// 136 kPa = 19.725 psi, 126 kPa = 18.275 psi: NIST SP 811, appendix B.8 (1 psi = 6.894757 kPa).
test.each([
  [136, 'psi', 'more', '19.8'],
  [126, 'psi', 'less', '18.2'],
  [136, 'bar', 'more', '1.36'],
  [136.4, 'bar', 'more', '1.37'],
  [136.4, 'bar', 'less', '1.36'],
  [155, 'kPa', 'less', '155'],
  [149.97, 'kPa', 'less', '149.9'],
  [149.91, 'kPa', 'more', '150'],
  [-20.46, 'kPa', 'less', '−20.5'],
] as const)('formatPressureBound writes %s kPa in %s or %s as %s', (kpa, unit, side, said) => {
  expect(formatPressureBound(kpa, unit, side)).toBe(said);
});

test('formatPressureBound refuses what is no number', () => {
  expect(() => formatPressureBound(NaN, 'psi', 'less')).toThrow('finite');
});
