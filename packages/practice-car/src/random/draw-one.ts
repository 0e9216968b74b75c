import { TooFewPointsError } from '@pullbook/tuning-math';
import type { Random } from './seeded-random.js';

/**
 * One of the choices, each equally likely.
 *
 * @param random the stream to draw from
 * @param choices at least one
 * @throws TooFewPointsError for no choices
 */
export function drawOne<T>(random: Random, choices: readonly T[]): T {
  const chosen = choices[Math.floor(random() * choices.length)];
  if (chosen === undefined)
    throw new TooFewPointsError('drawOne', {
      argument: 'choices',
      value: choices.length,
      allowed: 'at least one',
    });
  return chosen;
}
