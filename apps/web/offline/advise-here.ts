import type { AdviceBasis, NextPull } from '@pullbook/contracts';
import type { AdvicePull } from '@pullbook/next-pull';

export interface AdviceQuestion {
  readonly id: number;
  readonly basis: AdviceBasis;
  readonly pulls: readonly AdvicePull[];
}

export type AdviceAnswer =
  { readonly id: number; readonly next: NextPull } | { readonly id: number; readonly fault: string };

interface Waiting {
  readonly resolve: (next: NextPull) => void;
  readonly reject: (error: Error) => void;
}

let worker: Worker | null = null;
let lastId = 0;
const waiting = new Map<number, Waiting>();

/**
 * The next pull, worked out on this device by the server's own function, in a worker so that the keypad stays quick.
 *
 * @param pulls pulls of the preset in this visit in order, voided ones left out
 */
export function adviseHere(basis: AdviceBasis, pulls: readonly AdvicePull[]): Promise<NextPull> {
  const asked = (worker ??= startWorker());
  lastId += 1;
  const question: AdviceQuestion = { id: lastId, basis, pulls };
  return new Promise((resolve, reject) => {
    waiting.set(question.id, { resolve, reject });
    asked.postMessage(question);
  });
}

function startWorker(): Worker {
  const started = new Worker('/advice-worker.js');
  started.onmessage = ({ data }: MessageEvent<AdviceAnswer>) => {
    const asker = waiting.get(data.id);
    waiting.delete(data.id);
    if ('next' in data) asker?.resolve(data.next);
    else asker?.reject(new Error(data.fault));
  };
  started.onerror = () => {
    worker = null;
    for (const asker of waiting.values())
      asker.reject(new Error('The advice could not be worked out on this device.'));
    waiting.clear();
  };
  return started;
}
