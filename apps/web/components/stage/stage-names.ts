import type { Stage } from '@pullbook/contracts';

/** The stages of a visit, as people say them. */
export const stageNames: Readonly<Record<Stage, string>> = {
  booked: 'Booked',
  arrived: 'Arrived',
  'on-test': 'On test',
  'to-sign-off': 'To sign off',
  ready: 'Ready',
  collected: 'Collected',
};
