import { stages, type Role, type Stage } from '@pullbook/contracts';
import { expect, test } from 'vitest';
import { checkStageMove, type StageMove } from './check-stage-move.js';

const move = (from: Stage, to: Stage, more: Partial<StageMove> = {}): StageMove => ({
  from,
  to,
  role: 'tuner',
  isSealed: from === 'ready' || from === 'collected',
  pullCount: 3,
  ...more,
});
const refusal = (asked: StageMove): { code?: string; message?: string } => {
  try {
    checkStageMove(asked);
    return {};
  } catch (error) {
    return error as { code: string; message: string };
  }
};

test('checkStageMove lets a visit go one on or one back, and nowhere else', () => {
  const allowed = stages.flatMap((from) =>
    stages.filter((to) => !refusal(move(from, to, { isSealed: true })).code).map((to) => `${from} > ${to}`),
  );
  expect(allowed).toEqual([
    'booked > arrived',
    'arrived > booked',
    'arrived > on-test',
    'on-test > arrived',
    'on-test > to-sign-off',
    'to-sign-off > on-test',
    'to-sign-off > ready',
    'ready > collected',
    'collected > ready',
  ]);
});

test.each([
  [move('booked', 'ready'), 'a visit that is booked goes to arrived, not to ready'],
  [move('arrived', 'arrived'), 'the visit is arrived already'],
  [move('to-sign-off', 'ready'), 'sign the visit off first: a car is ready once its sign-off is sealed'],
  [
    move('on-test', 'to-sign-off', { pullCount: 0 }),
    'there is nothing to sign off yet: no pull is on record in this visit',
  ],
  [move('ready', 'on-test'), 'the visit is signed off and sealed; for more work on the car book a new visit'],
])('checkStageMove refuses %o in plain words', (asked, text) => {
  expect(refusal(asked)).toMatchObject({ code: 'stage-not-reachable', message: text });
});

test('checkStageMove leaves taking in and handing over to the desk, and no more', () => {
  const may = (role: Role) =>
    stages.flatMap((from) =>
      stages
        .filter((to) => !refusal(move(from, to, { role, isSealed: true })).code)
        .map((to) => `${from} > ${to}`),
    );
  expect(may('desk')).toEqual([
    'booked > arrived',
    'arrived > booked',
    'ready > collected',
    'collected > ready',
  ]);
  expect(may('owner')).toEqual(may('tuner'));
  expect(refusal(move('arrived', 'on-test', { role: 'desk' })).code).toBe('not-allowed');
});
