import type { ItemEvidence } from '@pullbook/contracts';

/** What the data answer by themselves, in words. */
export const evidenceNames: Readonly<Record<ItemEvidence, string>> = {
  accepted: 'duty accepted and stored',
  proven: 'proven by its pulls',
  ceilingKept: 'ceiling kept',
  heatSoakedPull: 'heat-soaked pull present',
};
