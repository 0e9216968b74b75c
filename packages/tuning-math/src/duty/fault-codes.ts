import type { DutyReasonCode } from './duty-advice-types.js';

/** Reasons to stop that may mean a fault of the car: somebody has to look it over. */
export const FAULT_CODES = [
  'peak-soared',
  'response-lost',
  'ceiling-passed-again',
] as const satisfies readonly DutyReasonCode[];

export type FaultCode = (typeof FAULT_CODES)[number];
