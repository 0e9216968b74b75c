/** The stages of a visit, in order. */
export const stages = ['booked', 'arrived', 'on-test', 'to-sign-off', 'ready', 'collected'] as const;

/** Stages in which the book of a visit is closed: nothing more is recorded in it. */
export const closedStages: readonly string[] = [
  'ready',
  'collected',
] satisfies readonly (typeof stages)[number][];
