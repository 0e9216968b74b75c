export {
  DEFAULT_PROOF_RULE,
  type PresetProof,
  type ProofGap,
  type ProofGapCode,
  type ProofPull,
  type ProofRequest,
  type ProofRule,
  type ProofState,
} from './proof-types.js';
export { provePreset } from './prove-preset.js';
