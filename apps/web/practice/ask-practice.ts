import type { PracticeOrder } from '@pullbook/practice-car';
import { workerLine } from '../client/worker-line';
import type { PracticeAnswer, PracticeAsks } from './practice-question';

const ask = workerLine<object, PracticeAnswer>(
  '/practice-worker.js',
  'The practice car could not be simulated on this device.',
);

/**
 * Asks the simulated car, which lives in a worker of its own: a pull takes a moment of computing, and the page stays
 * quick meanwhile. Nothing of it reaches the book.
 *
 * @param onProgress told the share done, 0 to 1, of what takes long
 */
export function askPractice<What extends keyof PracticeAsks>(
  what: What,
  order: PracticeOrder,
  question: PracticeAsks[What]['question'],
  onProgress?: (share: number) => void,
): Promise<PracticeAsks[What]['answer']> {
  // The worker answers each question with what belongs to it.
  return ask({ what, order, ...question }, onProgress) as Promise<PracticeAsks[What]['answer']>;
}
