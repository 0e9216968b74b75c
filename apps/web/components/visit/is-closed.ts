import { closedStages, type Visit } from '@pullbook/contracts';

/** Whether the book of a visit is closed: signed off and ready, or collected. Nothing more is recorded in it. */
export function isClosed({ stage }: Pick<Visit, 'stage'>): boolean {
  return closedStages.includes(stage);
}
