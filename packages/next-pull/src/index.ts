export { adviseOnce, type TracedDutyAdvice } from './advise-once.js';
export {
  advisePreset,
  type AdvicePull,
  type AdviceRules,
  type PresetAdvice,
  type PresetMaterial,
} from './advise-preset.js';
export { foundSoundAfter } from './found-sound-after.js';
export { nextPullOf } from './next-pull-of.js';
export { pullsAtBaseHold } from './pulls-at-base-hold.js';
export { soundPulls } from './sound-pulls.js';
export { pullWarnings, type PullBounds } from './pull-warnings.js';
