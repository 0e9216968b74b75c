import { adviseDuty } from '@pullbook/tuning-math';
import { expect, test } from 'vitest';
import { unitsOf } from '../../../../components/units/units-of';
import { sayWhy } from './say-why';

const psi = unitsOf({ pressure: 'psi', temperature: 'C' });

/** The reason of a real advice: were its words others, the range would stand twice. */
const first = (pulls: { duty: number; peakKpa: number }[]): string =>
  adviseDuty({
    controller: { dutyMin: 0, dutyMax: 100, dutyStep: 1 },
    goal: { targetKpa: 140, toleranceKpa: 4, ceilingKpa: 155 },
    baseKpa: 55,
    pulls,
  }).reasons[0]?.text ?? '';

test('sayWhy leaves out the range that stands beside it, and nothing else', () => {
  const text = first([]);
  expect(text).toMatch(/ Expect [\d.]+ to [\d.]+ kPa\.$/);
  const said = sayWhy(text, unitsOf({ pressure: 'kPa', temperature: 'C' }));
  expect(said).not.toContain('Expect');
  expect(text.startsWith(said)).toBe(true);
});

test('sayWhy speaks the person’s unit', () => {
  const text = first([
    { duty: 10, peakKpa: 56 },
    { duty: 20, peakKpa: 66 },
    { duty: 30, peakKpa: 80 },
    { duty: 40, peakKpa: 97 },
    { duty: 50, peakKpa: 118 },
    { duty: 60, peakKpa: 147 },
  ]);
  expect(text).toContain('kPa');
  expect(sayWhy(text, psi)).not.toContain('kPa');
});
