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
  PeakPrediction,
} from './duty-advice-types.js';
export { adviseDuty } from './advise-duty.js';
