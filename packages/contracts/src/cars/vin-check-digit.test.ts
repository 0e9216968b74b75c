import { expect, test } from 'vitest';
import { vinCheckDigit } from './vin-check-digit.js';

// 49 CFR 565.15 (c): the check digit is worked out from tables III to V of the rule. Both VINs below are worked by hand
// from those tables, not taken from any car.
test('vinCheckDigit agrees with seventeen ones, whose weighted sum is 89 = 8 · 11 + 1', () => {
  expect(vinCheckDigit('11111111111111111')).toBe('agrees');
});

test('vinCheckDigit takes X for a remainder of ten', () => {
  // Sixteen zeros but a 5 in the last place: 5 · 2 = 10.
  expect(vinCheckDigit('00000000X00000005')).toBe('agrees');
  expect(vinCheckDigit('00000000000000005')).toBe('differs');
});

test('vinCheckDigit counts letters by table III', () => {
  // A = 1 in the first place, weight 8; Z = 9 in the last, weight 2: 8 + 18 = 26, remainder 4.
  expect(vinCheckDigit('A00000004 0000000Z'.replace(' ', ''))).toBe('agrees');
  // S = 2 in the first place: 16, remainder 5.
  expect(vinCheckDigit('S0000000500000000')).toBe('agrees');
});

test('vinCheckDigit notices every single slip of a digit, as a remainder of eleven must', () => {
  const right = '11111111111111111';
  for (let place = 0; place < right.length; place += 1) {
    const wrong = `${right.slice(0, place)}7${right.slice(place + 1)}`;
    expect(vinCheckDigit(wrong)).toBe('differs');
  }
});

test('vinCheckDigit has nothing to say where no VIN is known', () => {
  expect(vinCheckDigit(null)).toBe('none');
});
