import { describe, expect, test } from 'vitest';
import { NotFiniteError, OutOfRangeError, type ArgumentError } from '../errors.js';
import { adviseDuty } from './advise-duty.js';
import type { DutyAdviceRequest } from './duty-advice-types.js';

const sound: DutyAdviceRequest = {
  controller: { dutyMin: 0, dutyMax: 100, dutyStep: 1 },
  goal: { targetKpa: 140, toleranceKpa: 4, ceilingKpa: 155 },
  baseKpa: 55,
  pulls: [{ duty: 10, peakKpa: 62 }],
};

const refused: [string, DutyAdviceRequest, new (...args: never[]) => ArgumentError][] = [
  [
    'controller.dutyMin',
    { ...sound, controller: { dutyMin: -1, dutyMax: 100, dutyStep: 1 } },
    OutOfRangeError,
  ],
  [
    'controller.dutyMin',
    { ...sound, controller: { dutyMin: NaN, dutyMax: 100, dutyStep: 1 } },
    NotFiniteError,
  ],
  ['controller.dutyMax', { ...sound, controller: { dutyMin: 0, dutyMax: 0, dutyStep: 1 } }, OutOfRangeError],
  [
    'controller.dutyMax',
    { ...sound, controller: { dutyMin: 0, dutyMax: 101, dutyStep: 1 } },
    OutOfRangeError,
  ],
  [
    'controller.dutyStep',
    { ...sound, controller: { dutyMin: 0, dutyMax: 100, dutyStep: 0 } },
    OutOfRangeError,
  ],
  [
    'controller.dutyStep',
    { ...sound, controller: { dutyMin: 0, dutyMax: 100, dutyStep: 0.001 } },
    OutOfRangeError,
  ],
  ['goal.targetKpa', { ...sound, goal: { ...sound.goal, targetKpa: 0 } }, OutOfRangeError],
  ['goal.targetKpa', { ...sound, goal: { ...sound.goal, targetKpa: Infinity } }, NotFiniteError],
  ['goal.toleranceKpa', { ...sound, goal: { ...sound.goal, toleranceKpa: 140 } }, OutOfRangeError],
  ['goal.ceilingKpa', { ...sound, goal: { ...sound.goal, ceilingKpa: 140 } }, OutOfRangeError],
  ['stepLimit', { ...sound, stepLimit: 0.5 }, OutOfRangeError],
  ['riskLimit', { ...sound, riskLimit: 0 }, OutOfRangeError],
  ['riskLimit', { ...sound, riskLimit: 0.6 }, OutOfRangeError],
  ['baseKpa', { ...sound, baseKpa: 0 }, OutOfRangeError],
  ['soundPulls', { ...sound, soundPulls: 2 }, OutOfRangeError],
  ['soundPulls', { ...sound, soundPulls: 0.5 }, OutOfRangeError],
  ['pulls[1].duty', { ...sound, pulls: [...sound.pulls, { duty: 101, peakKpa: 60 }] }, OutOfRangeError],
  ['pulls[1].peakKpa', { ...sound, pulls: [...sound.pulls, { duty: 20, peakKpa: NaN }] }, NotFiniteError],
  ['pulls[0].peakKpa', { ...sound, pulls: [{ duty: 20, peakKpa: -1 }] }, OutOfRangeError],
  ['pulls[0].heatSoakC', { ...sound, pulls: [{ duty: 20, peakKpa: 60, heatSoakC: 900 }] }, OutOfRangeError],
  [
    'pulls[0].secondsSincePrevious',
    { ...sound, pulls: [{ duty: 20, peakKpa: 60, secondsSincePrevious: -5 }] },
    OutOfRangeError,
  ],
  [
    'pulls',
    { ...sound, pulls: Array.from({ length: 201 }, () => ({ duty: 20, peakKpa: 60 })) },
    OutOfRangeError,
  ],
];

describe('adviseDuty refuses a request and names the field', () => {
  test.each(refused)('%s', (argument, request, errorClass) => {
    let thrown: unknown;
    try {
      adviseDuty(request);
    } catch (error) {
      thrown = error;
    }
    expect(thrown).toBeInstanceOf(errorClass);
    expect((thrown as ArgumentError).argument).toBe(argument);
    expect((thrown as ArgumentError).message).toContain(argument);
  });
});
