import { expect, test } from 'vitest';
import { readDuty } from './read-duty';

const controller = { dutyMin: 5, dutyMax: 95, dutyStep: 0.5 };

test('readDuty takes settings of the controller, decimal comma too', () => {
  expect(readDuty('5', controller)).toEqual({ duty: 5 });
  expect(readDuty('20,5', controller)).toEqual({ duty: 20.5 });
  expect(readDuty('95', controller)).toEqual({ duty: 95 });
});

test('readDuty says what is wrong with anything else', () => {
  for (const [text, words] of [
    ['', /number/],
    ['abc', /number/],
    ['4.5', /from 5 to 95/],
    ['95.5', /from 5 to 95/],
    ['20.3', /steps of 0.5/],
  ] as const)
    expect(readDuty(text, controller)).toEqual({ fault: expect.stringMatching(words) as string });
});
