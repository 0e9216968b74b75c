import type { Random } from './seeded-random.js';

/**
 * A number drawn evenly from [low, high).
 *
 * @param random the stream to draw from
 * @param low the least value
 * @param high the bound above
 */
export function drawBetween(random: Random, low: number, high: number): number {
  return low + (high - low) * random();
}
