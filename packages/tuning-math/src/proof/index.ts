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
export { derivePresetStanding } from './derive-preset-standing.js';
export type {
  PresetStanding,
  PresetStandingRequest,
  SetPull,
  StandingGap,
  StandingGapCode,
} from './preset-standing-types.js';
export { provePreset } from './prove-preset.js';
