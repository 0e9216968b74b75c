import { leastOverBoostCut, type BoostGoal } from '@pullbook/tuning-math';

/** The over-boost cut stands this far over the ceiling; common practice, no source. */
const OVER_CEILING_RATIO = 1.08;

/** Where the ECU of a practice car cuts, kPa gauge: as far above its ceiling as the readiness check of a real car asks. */
export function overBoostCutOf({ ceilingKpa }: BoostGoal): number {
  return Math.max(Math.round(ceilingKpa * OVER_CEILING_RATIO), Math.ceil(leastOverBoostCut(ceilingKpa)));
}
