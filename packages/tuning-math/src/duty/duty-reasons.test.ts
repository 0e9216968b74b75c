import { describe, expect, test } from 'vitest';
import { writeSentence } from '../sentences/index.js';
import { adviseDuty } from './advise-duty.js';
import type { DutyAction, DutyAdviceRequest, DutyPull, DutyReasonCode } from './duty-advice-types.js';

const pulls = (...pairs: [number, number][]): DutyPull[] =>
  pairs.map(([duty, peakKpa]) => ({ duty, peakKpa }));

const sound: DutyAdviceRequest = {
  controller: { dutyMin: 0, dutyMax: 100, dutyStep: 1 },
  goal: { targetKpa: 140, toleranceKpa: 4, ceilingKpa: 155 },
  baseKpa: 55,
  pulls: [],
};
const climb: [number, number][] = [
  [10, 56],
  [20, 66],
  [30, 80],
  [40, 97],
  [50, 118],
];
const many = (count: number, ...pairs: [number, number][]): [number, number][] =>
  Array.from({ length: count }, (_, index) => pairs[index % pairs.length] ?? [0, 0]);

interface Example {
  readonly why: string;
  readonly action: DutyAction;
  readonly request: DutyAdviceRequest;
  /** What the sentence must say. */
  readonly says: string;
}

/** One history for every code: a code that nothing brings about does not compile. */
const EXAMPLES: Record<DutyReasonCode, Example> = {
  'first-pull': { why: 'nothing was pulled yet', action: 'pull', request: sound, says: 'start low' },
  'measure-base': {
    why: 'nobody knows the base boost, and the lowest setting is ten points up',
    action: 'pull',
    request: {
      controller: { dutyMin: 10, dutyMax: 90, dutyStep: 1 },
      goal: { targetKpa: 140, toleranceKpa: 4, ceilingKpa: 149 },
      baseKpa: null,
      riskLimit: 0.004,
      pulls: [],
    },
    says: 'measure it at the lowest duty, 10 %',
  },
  'step-limit': {
    why: 'the target is far above',
    action: 'pull',
    request: { ...sound, pulls: pulls([10, 56], [20, 58], [30, 64]) },
    says: '10 points above 30 %',
  },
  'ceiling-risk': {
    why: 'the ceiling is close above a target that is nearly reached',
    action: 'pull',
    request: {
      ...sound,
      goal: { targetKpa: 140, toleranceKpa: 3, ceilingKpa: 149 },
      pulls: pulls([10, 56], [20, 69], [30, 84], [40, 106], [50, 130]),
    },
    says: 'the risk of passing the ceiling of 149 kPa would grow faster',
  },
  'aim-at-target': {
    why: 'the target is within one step',
    action: 'pull',
    request: { ...sound, pulls: pulls(...climb, [56, 132]) },
    says: 'most likely to make 140 kPa within 4 kPa',
  },
  'back-down': {
    why: 'the last pull made too much',
    action: 'pull',
    request: { ...sound, pulls: pulls(...climb, [60, 147], [60, 148]) },
    says: 'go back to',
  },
  confirm: {
    why: 'one reading on the target does not prove it where readings scatter',
    action: 'repeat',
    request: {
      ...sound,
      goal: { targetKpa: 140, toleranceKpa: 2.8, ceilingKpa: 160 },
      pulls: pulls(...climb, [58, 140]),
    },
    says: 'one more pull confirms it',
  },
  'low-reading-in-doubt': {
    why: 'the last reading fell back below an earlier one',
    action: 'repeat',
    request: { ...sound, pulls: pulls(...climb, [55, 108]) },
    says: 'a false low reading would hide how near the ceiling is',
  },
  'high-reading-in-doubt': {
    why: 'the last reading jumped, still under the ceiling',
    action: 'repeat',
    request: {
      ...sound,
      goal: { targetKpa: 176, toleranceKpa: 3.6, ceilingKpa: 189 },
      baseKpa: 63,
      pulls: pulls([8, 60], [18, 120]),
    },
    says: 'more than the pulls before it lead one to expect',
  },
  'learn-scatter': {
    why: 'readings contradict one another just below the ceiling',
    action: 'repeat',
    request: {
      ...sound,
      controller: { dutyMin: 0, dutyMax: 95, dutyStep: 1 },
      goal: { targetKpa: 76.2, toleranceKpa: 2.1, ceilingKpa: 81.8 },
      pulls: pulls([5, 50], [15, 54.6], [25, 62.4], [30, 70], [32, 77], [31, 71]),
    },
    says: 'to learn how far its peaks scatter',
  },
  'inside-tolerance': {
    why: 'the duty made the target again',
    action: 'accept',
    request: { ...sound, pulls: pulls(...climb, [58, 139.5], [58, 140.4]) },
    says: 'proved by pulls 6, 7',
  },
  'target-out-of-reach': {
    why: 'the car stays flat to full duty',
    action: 'stop',
    request: {
      ...sound,
      pulls: pulls(...Array.from({ length: 10 }, (_, i): [number, number] => [10 * (i + 1), 57 + i])),
    },
    says: 'Highest so far: 66 kPa',
  },
  'floor-over-target': {
    why: 'the lowest duty makes too much',
    action: 'stop',
    request: { ...sound, baseKpa: null, pulls: pulls([10, 151], [0, 150], [0, 150.5]) },
    says: 'Even the lowest duty (0 %) makes more than 144 kPa',
  },
  'peak-soared': {
    why: 'a hose came off the actuator',
    action: 'stop',
    request: { ...sound, pulls: pulls([10, 56], [20, 56.5], [30, 57], [40, 190]) },
    says: 'soared to 190 kPa at 40 %',
  },
  'ceiling-passed-again': {
    why: 'three peaks just past the ceiling, each expected more than the one before',
    action: 'stop',
    request: { ...sound, pulls: pulls(...climb, [60, 157], [59, 156], [59, 157]) },
    says: 'The ceiling of 155 kPa was passed again (157 kPa at 59 %)',
  },
  'response-lost': {
    why: 'two low readings running',
    action: 'stop',
    request: { ...sound, pulls: pulls(...climb, [55, 92], [55, 91]) },
    says: '(91 kPa at 55 %)',
  },
  'no-safe-duty': {
    why: 'the measured base boost is near the ceiling',
    action: 'stop',
    request: { ...sound, goal: { targetKpa: 57, toleranceKpa: 1.3, ceilingKpa: 62.3 }, baseKpa: 66.3 },
    says: 'No duty keeps the chance of passing the ceiling of 62.3 kPa',
  },
  'no-duty-in-tolerance': {
    why: 'the response falls between settings',
    action: 'stop',
    request: {
      ...sound,
      controller: { dutyMin: 0, dutyMax: 100, dutyStep: 5 },
      pulls: pulls(...climb, ...many(42, [55, 130], [60, 146], [50, 119])),
    },
    says: '47 pulls have not found a duty',
  },
  'scatter-too-wide': {
    why: 'thirty readings at one duty lie on both sides of the tolerance',
    action: 'stop',
    request: {
      ...sound,
      goal: { targetKpa: 140, toleranceKpa: 1.5, ceilingKpa: 165 },
      pulls: pulls(...climb, ...many(30, [57, 132], [57, 144], [57, 137], [57, 149])),
    },
    says: 'too much for a tolerance of 1.5 kPa',
  },
  'heat-soak': {
    why: 'several pulls were made without a rest',
    action: 'pull',
    request: { ...sound, pulls: pulls([10, 56], [20, 58], [30, 64], [35, 70]) },
    says: 'soaking with heat',
  },
  'found-sound': {
    why: 'a peak past the ceiling was no fault: the car was looked over',
    action: 'pull',
    request: { ...sound, pulls: pulls([10, 56], [20, 56.5], [30, 57], [40, 190]), soundPulls: 4 },
    says: 'no fault is read into its first 4 usable pulls',
  },
  'earlier-cars': {
    why: 'the workshop has tuned this build before',
    action: 'pull',
    request: {
      ...sound,
      pulls: pulls(...climb.slice(0, 3)),
      earlierCars: [{ pulls: pulls(...climb, [58, 140]) }],
    },
    says: 'Leans on 1 earlier car of this build',
  },
  'expected-range': {
    why: 'a pull is asked for',
    action: 'pull',
    request: { ...sound, pulls: pulls(...climb) },
    says: 'Expect 1',
  },
};

/** These never decide. */
const ADDING = ['heat-soak', 'found-sound', 'earlier-cars', 'expected-range'];

describe('adviseDuty gives each of its reasons', () => {
  const examples = Object.entries(EXAMPLES).map(
    ([code, { why, ...example }]) => [code, why, example] as const,
  );

  test.each(examples)('%s: %s', (code, _why, { action, request, says }) => {
    const advice = adviseDuty(request);
    const reason = advice.reasons.find((given) => given.code === code);
    expect(advice.reasons.map((given) => given.code)).toContain(code);
    expect(reason?.text).toContain(says);
    expect(advice.action).toBe(action);
    expect(advice.duty === null).toBe(action === 'stop');
    for (const { text } of advice.reasons) expect(text).not.toMatch(/NaN|undefined|Infinity|null/);
  });

  test.each(examples)(
    '%s has every pressure as a number, for a reader with another unit',
    (_code, _why, one) => {
      for (const { text, pieces } of adviseDuty(one.request).reasons) {
        expect(writeSentence(pieces, 'kPa')).toBe(text);
        expect(pieces.filter((piece) => typeof piece === 'string').join('')).not.toMatch(/\d ?kPa/);
        expect(writeSentence(pieces, 'psi').includes('psi')).toBe(text.includes('kPa'));
      }
    },
  );

  test('expected-range gives the range of the prediction, to a tenth of a kPa', () => {
    const { prediction, reasons } = adviseDuty(EXAMPLES['expected-range'].request);
    const [range] = reasons.find(({ code }) => code === 'expected-range')?.pieces.slice(1) ?? [];
    expect(range).toEqual({
      value: Number(prediction?.lowKpa.toFixed(1)),
      to: Number(prediction?.highKpa.toFixed(1)),
      unit: 'kPa',
    });
  });

  test.each(examples.filter(([code]) => !ADDING.includes(code)))(
    '%s comes first, since it decided',
    (code, _why, { request }) => {
      expect(adviseDuty(request).reasons[0]?.code).toBe(code);
    },
  );
});
