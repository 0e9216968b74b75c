import type { DutyAdvice, GateHoldAdvice } from '@pullbook/contracts';
import { FAULT_CODES, type FaultCode } from '@pullbook/tuning-math';

/** The fault that a stop of either search may mean; null where it means none, such as a target out of reach. */
export function faultOfStop({
  reasons: [first],
}: Pick<DutyAdvice | GateHoldAdvice, 'reasons'>): FaultCode | null {
  return FAULT_CODES.find((code) => code === first?.code) ?? null;
}
