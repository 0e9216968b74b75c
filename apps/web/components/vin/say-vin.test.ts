import { describe, expect, it } from 'vitest';
import { checkVin, sayVin } from './vin-check-digit';

describe('checkVin', () => {
  // Worked examples of check digits that are well known in the trade; 49 CFR 565.15 gives weights and letter values.
  // From memory: seventeen ones give remainder 1; 1M8GDM9AXKP042788 has the remainder 10, written X.
  it.each(['11111111111111111', '1M8GDM9AXKP042788', '1m8gdm9axkp042788'])('agrees with %s', (vin) => {
    expect(checkVin(vin)).toBe('agrees');
  });

  it('differs when one character is mistyped', () => {
    expect(checkVin('1M8GDM9AXKP042789')).toBe('differs');
    expect(checkVin('1M8GDM9A1KP042788')).toBe('differs');
  });

  it('refuses I, O, Q, other marks and more than 17 characters', () => {
    for (const vin of ['1M8GDM9AXKPO42788', 'I', 'Q', '1M8-', '111111111111111111']) {
      expect(checkVin(vin)).toBe('not-a-vin');
    }
  });

  it('says that it is incomplete before the 17th character', () => {
    expect(checkVin('1M8GDM9')).toBe('incomplete');
    expect(checkVin('')).toBe('incomplete');
  });
});

describe('sayVin', () => {
  it('says nothing of an empty field and counts what is there', () => {
    expect(sayVin('  ')).toBeUndefined();
    expect(sayVin('1M8')).toBe('3 of 17 characters.');
  });
});
