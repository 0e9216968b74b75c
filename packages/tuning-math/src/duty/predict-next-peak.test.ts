import { describe, expect, test } from 'vitest';
import { OutOfRangeError } from '../errors.js';
import { adviseDuty } from './advise-duty.js';
import type { DutyAdviceRequest } from './duty-advice-types.js';
import { predictNextPeak } from './predict-next-peak.js';

const request: DutyAdviceRequest = {
  controller: { dutyMin: 0, dutyMax: 100, dutyStep: 1 },
  goal: { targetKpa: 140, toleranceKpa: 4, ceilingKpa: 155 },
  baseKpa: 55,
  pulls: [
    { duty: 10, peakKpa: 56 },
    { duty: 20, peakKpa: 63 },
  ],
};

describe('predictNextPeak', () => {
  test('gives the range that adviseDuty predicts at the duty it advises', () => {
    const { duty, prediction } = adviseDuty(request);
    const [low, median, high] = predictNextPeak(request, { duty: duty ?? 0, shares: [0.025, 0.5, 0.975] });
    expect(low).toBeCloseTo(prediction?.lowKpa ?? 0, 9);
    expect(median).toBeCloseTo(prediction?.medianKpa ?? 0, 9);
    expect(high).toBeCloseTo(prediction?.highKpa ?? 0, 9);
  });

  test('rises with the share', () => {
    const quantiles = predictNextPeak(request, { duty: 30, shares: [0.05, 0.25, 0.5, 0.75, 0.95] });
    quantiles.forEach((quantile, index) => expect(quantile).toBeGreaterThan(quantiles[index - 1] ?? 0));
  });

  test.each([
    { duty: 101, shares: [0.5] },
    { duty: Number.NaN, shares: [0.5] },
    { duty: 30, shares: [0] },
    { duty: 30, shares: [1] },
  ])('refuses duty $duty with shares $shares', (question) => {
    expect(() => predictNextPeak(request, question)).toThrow(OutOfRangeError);
  });
});
