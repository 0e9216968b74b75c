export { adviseGateHold } from './advise-gate-hold.js';
export type {
  GateHoldAction,
  GateHoldAdvice,
  GateHoldReason,
  GateHoldReasonCode,
  GateHoldRequest,
  HoldController,
  HoldGain,
  HoldGoal,
  HoldPrediction,
  HoldPull,
} from './gate-hold-types.js';
