export { adviseCorrection } from './advise-correction.js';
export type {
  CorrectionAction,
  CorrectionAdvice,
  CorrectionController,
  CorrectionPull,
  CorrectionReasonCode,
  CorrectionRequest,
} from './correction-types.js';
