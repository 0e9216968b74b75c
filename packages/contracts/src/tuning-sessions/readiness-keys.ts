/** What must be true before the first pull; the keys are stable, the words may be the workshop's. */
export const readinessKeys = [
  'place-closed',
  'second-person',
  'no-leaks',
  'lines-secure',
  'oil-warm',
  'idle-vacuum-steady',
  'over-boost-cut-set',
  'mixture-watched',
  'knock-watched',
] as const;
