import { adviseDuty } from '@pullbook/tuning-math';
import { expect, test } from 'vitest';
import { unitsOf } from './units-of';

const psi = unitsOf({ pressure: 'psi', temperature: 'C' });

test('sayReason writes the pressures of an advice in the person’s unit', () => {
  const [why, range] = adviseDuty({
    controller: { dutyMin: 0, dutyMax: 100, dutyStep: 1 },
    goal: { targetKpa: 140, toleranceKpa: 4, ceilingKpa: 155 },
    baseKpa: 55,
    pulls: [],
  }).reasons.map(({ text, pieces }) => psi.sayReason({ text, pieces: [...pieces] }));
  expect(why).toMatch(/^First pull: start low at \d+ % duty/);
  expect(range).toMatch(/^Expect \d+\.\d to \d+\.\d psi\.$/);
});

test('sayReason takes no pressure out of words: what a file says stays as it says it', () => {
  const pieces = ['column "MAP 250 kPa" reads ', { value: 100, unit: 'kPa' as const }];
  expect(psi.sayReason({ text: 'column "MAP 250 kPa" reads 100 kPa', pieces })).toBe(
    'column "MAP 250 kPa" reads 14.5 psi',
  );
});

test('sayReason leaves a reason that was put on record without pieces as it stands', () => {
  expect(psi.sayReason({ text: 'The peak (100 kPa) passed.' })).toBe('The peak (100 kPa) passed.');
});
