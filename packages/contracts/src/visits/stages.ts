/** The stages of a visit, in order. */
export const stages = ['booked', 'arrived', 'on-test', 'to-sign-off', 'ready', 'collected'] as const;
