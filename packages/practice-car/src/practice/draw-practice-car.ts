import { OutOfRangeError } from '@pullbook/tuning-math';
import { physicalPracticeCar } from './physical-practice-car.js';
import { PRACTICE_LEVELS, type PracticeCar, type PracticeOrder } from './practice-car.js';
import { shapePracticeCar } from './shape-practice-car.js';

const MOST_NUMBER = 9999;

/**
 * The practice car of a level and number. `calm`: a sound car that repeats well. `lively`: sound, in any weather, it
 * heats up, and now and then a pull ends early. `steep`: sound, with a gauge alone, flat at first and then steep.
 * `doubtful`: as lively, and it may lose a hose or the like on the way, or not reach its target at all.
 *
 * @param order level, and number from 1 to 9999
 * @throws OutOfRangeError for a number outside that
 * Cost: some tens of runs of `runPull` at most.
 */
export function drawPracticeCar(order: PracticeOrder): PracticeCar {
  const { level, number } = order;
  if (!Number.isInteger(number) || number < 1 || number > MOST_NUMBER)
    throw new OutOfRangeError('drawPracticeCar', {
      argument: 'number',
      value: number,
      allowed: `a whole number from 1 to ${MOST_NUMBER}`,
    });
  const seed = number * PRACTICE_LEVELS.length + PRACTICE_LEVELS.indexOf(level);
  return level === 'steep' ? shapePracticeCar(order, seed) : physicalPracticeCar(order, seed);
}
