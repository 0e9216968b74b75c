import { describe, expect, it } from 'vitest';
import { sayVin } from './say-vin';

describe('sayVin', () => {
  // Worked examples of check digits that are well known in the trade; 49 CFR 565.15 gives weights and letter values.
  // From memory: seventeen ones give remainder 1; 1M8GDM9AXKP042788 has the remainder 10, written X.
  it.each(['11111111111111111', '1M8GDM9AXKP042788', ' 1m8gdm9axkp042788 '])(
    'says of %s that it agrees',
    (vin) => {
      expect(sayVin(vin)).toBe('✓ The check digit agrees.');
    },
  );

  it('says that it differs when one character is mistyped', () => {
    for (const vin of ['1M8GDM9AXKP042789', '1M8GDM9A1KP042788'])
      expect(sayVin(vin)).toMatch(/^The check digit differs/);
  });

  it('minds I, O, Q, other marks and more than 17 characters', () => {
    for (const vin of ['1M8GDM9AXKPO42788', 'I', 'Q', '1M8-', '111111111111111111'])
      expect(sayVin(vin)).toMatch(/without I, O and Q/);
  });

  it('says nothing of an empty field and counts what is there', () => {
    expect(sayVin('  ')).toBeUndefined();
    expect(sayVin('1M8')).toBe('3 of 17 characters.');
  });
});
