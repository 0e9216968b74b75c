import { expect, test } from 'vitest';
import { sayFinding, sayPulls } from './say-finding';

test('sayPulls names one pull, two, and more', () => {
  expect([[3], [3, 4], [3, 4, 6]].map(sayPulls)).toEqual(['pull 3', 'pulls 3 and 4', 'pulls 3, 4 and 6']);
});

test('sayFinding names the pulls that a finding rests on', () => {
  expect(sayFinding({ kind: 'mind', code: 'steps-over', pulls: [2, 5] })).toContain(
    '10 points at pulls 2 and 5',
  );
  expect(sayFinding({ kind: 'mind', code: 'confirmed-too-little', pulls: [4] })).toContain(
    '1 usable pull of 3',
  );
  expect(sayFinding({ kind: 'mind', code: 'confirmed-too-little', pulls: [] })).toContain(
    '0 usable pulls of 3',
  );
});
