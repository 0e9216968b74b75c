import type { PracticeOrder } from '@pullbook/practice-car';
import type { PracticeAsks, PracticeReply } from './practice-question';

interface Waiting {
  readonly resolve: (answer: never) => void;
  readonly reject: (error: Error) => void;
  readonly onProgress: ((share: number) => void) | undefined;
}

let worker: Worker | null = null;
let lastId = 0;
const waiting = new Map<number, Waiting>();

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
  const asked = (worker ??= startWorker());
  lastId += 1;
  const id = lastId;
  return new Promise((resolve, reject) => {
    waiting.set(id, { resolve, reject, onProgress });
    asked.postMessage({ id, what, order, ...question });
  });
}

function startWorker(): Worker {
  const started = new Worker('/practice-worker.js');
  started.onmessage = ({ data }: MessageEvent<PracticeReply>) => {
    const asker = waiting.get(data.id);
    if ('share' in data) return asker?.onProgress?.(data.share);
    waiting.delete(data.id);
    if ('answer' in data) return asker?.resolve(data.answer as never);
    return asker?.reject(new Error(data.fault));
  };
  started.onerror = () => {
    worker = null;
    for (const asker of waiting.values())
      asker.reject(new Error('The practice car could not be simulated on this device.'));
    waiting.clear();
  };
  return started;
}
