import { expect, test } from 'vitest';
import { sayStored } from './say-stored';

test.each([
  [{ dutyPct: null, gateHoldPct: null, correctionStrength: null }, 'No duty is stored.'],
  [{ dutyPct: 40.5, gateHoldPct: null, correctionStrength: null }, 'Stored now: duty 40.5 %.'],
  [
    { dutyPct: 52, gateHoldPct: 0, correctionStrength: 9 },
    'Stored now: duty 52 %, gate hold 0 %, correction strength 9.',
  ],
])('sayStored tells %j', (stored, said) => {
  expect(sayStored(stored)).toBe(said);
});
