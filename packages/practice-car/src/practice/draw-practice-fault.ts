import { faultOf, type Fault, type FaultKind } from '../faults/fault.js';
import { drawBetween } from '../random/draw-between.js';
import { drawOne } from '../random/draw-one.js';
import type { Random } from '../random/seeded-random.js';

/** A fault and the pull from which on it is there, counted from 0. */
export interface PracticeFault {
  readonly fault: Fault;
  readonly fromIndex: number;
}

/** What comes loose, sticks or dies on a car between two pulls. */
const COMING: readonly FaultKind[] = [
  'actuator-line-off',
  'solenoid-line-off',
  'dead-solenoid',
  'sticking-gate',
  'leak',
  'lazy-solenoid',
];

/**
 * Draws what fails on a practice car and when: not before its second pull, and not later than a careful person needs to
 * get to the duty that makes the target.
 *
 * @param goodDuty about that duty, %
 */
export function drawPracticeFault(random: Random, goodDuty: number): PracticeFault {
  const kind = drawOne(random, COMING);
  const pullsOnTheWay = Math.max(Math.ceil(goodDuty / 10), 2);
  const fromIndex = 1 + Math.floor(random() * pullsOnTheWay);
  return { fault: faultOf(kind, drawBetween(random, 0.6, 1)), fromIndex };
}
