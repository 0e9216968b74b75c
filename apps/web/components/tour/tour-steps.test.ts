import { expect, test } from 'vitest';
import { tourSteps } from './tour-steps';

const names = (role: 'tuner' | 'desk', isDemo: boolean) => tourSteps(role, isDemo).map(({ name }) => name);

test('tourSteps leads a tuner through the job in its order', () => {
  expect(names('tuner', true)).toEqual([
    'Board',
    'Readiness',
    'Next pull',
    'Record',
    'Proof',
    'Sign-off',
    'Report',
  ]);
});

test('tourSteps drives practice cars in a real book', () => {
  expect(names('tuner', false)[0]).toBe('Practice');
  expect(
    tourSteps('tuner', false)
      .filter(({ href }) => href !== undefined)
      .map(({ href }) => href),
  ).toEqual(['/practice']);
});

test('tourSteps asks no tuning of the desk', () => {
  for (const isDemo of [true, false]) {
    expect(names('desk', isDemo)).toEqual(['Take in', 'Job sheet', 'Hand over']);
    expect(JSON.stringify(tourSteps('desk', isDemo))).not.toMatch(/duty|pull|peak/i);
  }
});
