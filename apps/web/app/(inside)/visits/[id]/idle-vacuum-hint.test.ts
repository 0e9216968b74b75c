import { describe, expect, it } from 'vitest';
import { unitsOf } from '../../../../components/units/units-of';
import { idleVacuumHint } from './idle-vacuum-hint';

const units = unitsOf({ pressure: 'kPa', temperature: 'C' });

describe('idleVacuumHint', () => {
  // 17 to 22 inHg near sea level: common practice; 1 inHg is 3.386 kPa.
  it('takes sea level where nobody read a barometer', () => {
    expect(idleVacuumHint(null, '', units)).toMatch(/near sea level usually shows .58 to .75\skPa/);
  });

  // 89.87 kPa is 1000 m in the ICAO standard atmosphere: 3.28 inHg less vacuum.
  it('expects less vacuum up a mountain', () => {
    expect(idleVacuumHint(89.87, '', units)).toMatch(/at about 1000 m usually shows .46 to .63\skPa/);
  });

  it('says where a reading lies, and nothing of one that cannot be read', () => {
    expect(idleVacuumHint(null, '-65', units)).toContain('Yours lies within it');
    expect(idleVacuumHint(null, '-40', units)).toContain('less vacuum');
    expect(idleVacuumHint(null, '-80', units)).toContain('more vacuum');
    expect(idleVacuumHint(null, 'abc', units)).not.toContain('Yours');
  });
});
