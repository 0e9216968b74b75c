import type { Random } from './seeded-random.js';

/**
 * A number drawn from the standard normal distribution.
 *
 * @param random the stream to draw from; each call takes two numbers of it
 * Source: Box and Muller, Ann. Math. Statist. 29 (1958) 610-611.
 */
export function drawNormal(random: Random): number {
  const radius = Math.sqrt(-2 * Math.log(1 - random()));
  return radius * Math.cos(2 * Math.PI * random());
}
