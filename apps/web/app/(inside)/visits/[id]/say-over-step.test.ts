import { describe, expect, it } from 'vitest';
import { sayOverStep } from './say-over-step';

const next = (more: object = {}) =>
  ({ stepLimit: 10, highestDutyPct: null, basis: { provenDutyPct: null }, ...more }) as never;

describe('sayOverStep', () => {
  it('says nothing up to one step above the highest pull, and how far one may go beyond', () => {
    expect(sayOverStep('10', next(), 0)).toBeNull();
    expect(sayOverStep('11', next(), 0)).toContain('Set 10 % or less');
    expect(sayOverStep('30,5', next({ highestDutyPct: 20 }), 0)).toContain('Set 30 % or less');
  });

  it('says of the proven duty of a car that came back what has to be true, and of a higher one to go less far', () => {
    const back = next({ basis: { provenDutyPct: 45 } });
    expect(sayOverStep('45', back, 0)).toMatch(/^Nothing this high .* 45 % was proven .* only if nothing/);
    expect(sayOverStep('46', back, 0)).toContain('Set 10 % or less');
  });

  it('gets along with an answer that the device kept from before proven duties were told', () => {
    expect(sayOverStep('45', next({ basis: {} }), 0)).toContain('Set 10 % or less');
  });
});
