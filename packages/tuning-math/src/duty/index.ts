export type {
  BoostGoal,
  DutyAction,
  DutyAdvice,
  DutyAdviceRequest,
  DutyController,
  DutyCurvePoint,
  DutyPull,
  DutyReason,
  DutyReasonCode,
  EarlierCar,
  PeakPrediction,
} from './duty-advice-types.js';
export { ACCEPT_CONFIDENCE } from './decision-settings.js';
export { FAULT_CODES, type FaultCode } from './fault-codes.js';
export { adviseDuty } from './advise-duty.js';
export { dutyGrid } from './duty-grid.js';
export { predictNextPeak, type NextPeakQuestion } from './predict-next-peak.js';
