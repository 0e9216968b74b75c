import type { ProofPull, ProofRequest } from './proof-types.js';

/** Whether a pull counts for a preset of this kind: usable, and with the override on or off as it must be. */
export function isCounted(pull: ProofPull, kind: ProofRequest['kind']): boolean {
  if (!pull.isUsable) return false;
  return typeof pull.isOverrideOn !== 'boolean' || pull.isOverrideOn === (kind === 'timed-override');
}
