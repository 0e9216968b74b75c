import type { BoostGoal } from '@pullbook/tuning-math';

/** A goal as people agree on it: whole kilopascals, the tolerance never narrower than it was. */
export function tidyGoal({ targetKpa, toleranceKpa, ceilingKpa }: BoostGoal): BoostGoal {
  return {
    targetKpa: Math.round(targetKpa),
    toleranceKpa: Math.ceil(toleranceKpa),
    ceilingKpa: Math.round(ceilingKpa),
  };
}
