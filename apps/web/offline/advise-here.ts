import type { AdviceBasis, NextPull } from '@pullbook/contracts';
import type { AdvicePull } from '@pullbook/next-pull';
import { workerLine } from '../client/worker-line';

interface Asked {
  readonly basis: AdviceBasis;
  readonly pulls: readonly AdvicePull[];
}

export type AdviceQuestion = Asked & { readonly id: number };

export type AdviceAnswer =
  { readonly id: number; readonly answer: NextPull } | { readonly id: number; readonly fault: string };

const ask = workerLine<Asked, NextPull>(
  '/advice-worker.js',
  'The advice could not be worked out on this device.',
);

/**
 * The next pull, worked out on this device by the server's own function, in a worker so that the keypad stays quick.
 *
 * @param pulls pulls of the preset in this visit in order, voided ones left out
 */
export const adviseHere = (basis: AdviceBasis, pulls: readonly AdvicePull[]): Promise<NextPull> =>
  ask({ basis, pulls });
