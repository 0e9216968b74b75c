import { expect, test } from 'vitest';
import { formatPressure } from './format-pressure.js';
import { sayPressures } from './say-pressures.js';

const inPsi = (text: string) =>
  sayPressures(text, (kpa) => formatPressure(kpa, 'psi', { withUnit: false }), 'psi');

// 100 kPa = 14.50 psi, 120 kPa = 17.40 psi, 4 kPa = 0.58 psi: NIST SP 811, appendix B.8 (1 psi = 6.894757 kPa).
test.each([
  ['a figure', 'Expect more than 100 kPa at 50 %.', 'Expect more than 14.5 psi at 50 %.'],
  ['a range', 'Expect 100 to 120 kPa.', 'Expect 14.5 to 17.4 psi.'],
  ['both ends with their unit', 'from 100.0 kPa to 120.0 kPa', 'from 14.5 psi to 17.4 psi'],
  ['a goal with its tolerance', 'it was target 120.0 kPa ± 4.0 kPa', 'it was target 17.4 psi ± 0.6 psi'],
  ['a tolerance without unit', 'outside 120 kPa ± 4: find', 'outside 17.4 psi ± 0.6: find'],
  ['a target before its tolerance', 'target 120 ± 4 kPa', 'target 17.4 ± 0.6 psi'],
  ['below zero', 'idles at -60 kPa', 'idles at −8.7 psi'],
  ['two in one sentence', '100 kPa, ceiling 120 kPa', '14.5 psi, ceiling 17.4 psi'],
])('sayPressures writes %s in the person’s unit', (_what, text, said) => {
  expect(inPsi(text)).toBe(said);
});

// 136 kPa = 19.725 psi, 126 kPa = 18.275 psi, by the same factor.
test.each([
  ['136 kPa or more', '19.8 psi or more'],
  ['126 kPa or less', '18.2 psi or less'],
  [
    'set the cut to 136.4 kPa or more, or lower it to 126 kPa or less',
    'set the cut to 19.8 psi or more, or lower it to 18.2 psi or less',
  ],
  ['136 kPa or moreover', '19.7 psi or moreover'],
])('sayPressures rounds the bound of “%s” to its safe side', (text, said) => {
  expect(inPsi(text)).toBe(said);
});

test('a bound that is written to the last figure stays what it is', () => {
  const inBar = (text: string) =>
    sayPressures(text, (kpa) => formatPressure(kpa, 'bar', { withUnit: false }), 'bar');
  expect(inBar('136 kPa or more')).toBe('1.36 bar or more');
  expect(inBar('136.4 kPa or more')).toBe('1.37 bar or more');
  expect(inBar('136.4 kPa or less')).toBe('1.36 bar or less');
});

test('sayPressures leaves duties, counts and times alone', () => {
  const text = '20 % is the largest step allowed (10 points above 10 %), pulls 6, 7, 2.4 times a second';
  expect(inPsi(text)).toBe(text);
});

test('who reads kPa gets the text as it is', () => {
  const text = 'Expect 100.4 to 120 kPa.';
  expect(sayPressures(text, () => 'not asked', 'kPa')).toBe(text);
});
