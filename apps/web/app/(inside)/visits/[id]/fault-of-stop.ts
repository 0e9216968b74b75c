import type { DutyAdvice } from '@pullbook/contracts';
import type { DutyReasonCode } from '@pullbook/tuning-math';

const faultCodes = [
  'peak-soared',
  'response-lost',
  'ceiling-passed-again',
] as const satisfies readonly DutyReasonCode[];

/** Reasons to stop that may mean a fault of the car. */
export type FaultCode = (typeof faultCodes)[number];

/** The fault that a stop may mean; null where it means none, such as a target out of reach. */
export function faultOfStop({ reasons: [first] }: Pick<DutyAdvice, 'reasons'>): FaultCode | null {
  return faultCodes.find((code) => code === first?.code) ?? null;
}
