import { expect, test } from 'vitest';
import { amount, sentence, writeSentence } from './index.js';

test('sentence keeps its amounts as numbers beside the text in kPa', () => {
  expect(sentence`The peak (${amount(158.04, 'kPa')}) passed at ${amount(40, '%')}.`).toEqual({
    text: 'The peak (158 kPa) passed at 40 %.',
    pieces: ['The peak (', { value: 158, unit: 'kPa' }, ') passed at ', { value: 40, unit: '%' }, '.'],
  });
});

test('sentence takes in another one whole, and joins words with words', () => {
  const error = sentence`${amount(4, 'kPa')} ${'below'} target`;
  expect(sentence`Boost settles ${error}${''}.`.pieces).toEqual([
    'Boost settles ',
    { value: 4, unit: 'kPa' },
    ' below target.',
  ]);
});

// 100 kPa = 14.50 psi, 120 kPa = 17.40 psi, 4 kPa = 0.58 psi: NIST SP 811, appendix B.8 (1 psi = 6.894757 kPa).
test.each([
  ['a figure', sentence`more than ${amount(100, 'kPa')} at ${amount(50, '%')}`, 'more than 14.5 psi at 50 %'],
  ['a range', sentence`${{ ...amount(100, 'kPa'), to: 120 }}.`, '14.5 to 17.4 psi.'],
  ['below zero', sentence`idles at ${amount(-60, 'kPa')}`, 'idles at −8.7 psi'],
  ['a tolerance', sentence`${amount(120, 'kPa')} ± ${amount(4, 'kPa')}`, '17.4 psi ± 0.6 psi'],
  ['other units', sentence`${amount(2.25, 'Hz', 2)}, ${amount(180, 'r/min')}`, '2.25 Hz, 180 r/min'],
  [
    'what looks like a pressure in words',
    sentence`gear 5, 120 kPa by the ${'note'}`,
    'gear 5, 120 kPa by the note',
  ],
])('writeSentence writes %s for a reader of psi', (_what, { pieces }, said) => {
  expect(writeSentence(pieces, 'psi')).toBe(said);
});

test('amount rounds as asked, never to a negative zero, and refuses what is no number', () => {
  expect(amount(20.256, '%', 2)).toEqual({ value: 20.26, unit: '%' });
  expect(Object.is(amount(-0.04, 'kPa').value, 0)).toBe(true);
  expect(() => amount(NaN, 'kPa')).toThrow('finite');
  expect(() => amount(1, 'kPa', 1.5)).toThrow('whole number');
});
