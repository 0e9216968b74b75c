import { chiSquareQuantile } from '../numerics/chi-square-quantile.js';
import { normalQuantile } from '../numerics/normal-quantile.js';
import type { ToleranceInterval } from '../statistics/tolerance-interval.js';
import type { ProofRequest, ProofRule } from './proof-types.js';

/** Beyond this many pulls the tuner should look for the cause of the scatter instead. */
const MOST_PULLS = 30;

/**
 * Usable pulls in all that would prove the preset if mean and scatter stay as they are; null where 30 would
 * not, or where nothing can be said yet. A planning figure: the proof itself uses the exact factor.
 *
 * Source: Howe, J. Amer. Statist. Assoc. 64 (1969) 610-620, within 1 % of the exact factor from 6 pulls up.
 */
export function pullsLikelyNeeded(
  { goal, pooled }: ProofRequest,
  rule: ProofRule,
  interval: ToleranceInterval | null,
): number | null {
  if (goal === null || interval === null) return null;
  const roofKpa = Math.min(goal.targetKpa + goal.toleranceKpa, goal.ceilingKpa);
  const roomKpa = Math.min(interval.mean - (goal.targetKpa - goal.toleranceKpa), roofKpa - interval.mean);
  if (roomKpa < 0) return null;
  const z = normalQuantile(0.5 + rule.coverageRatio / 2);
  for (let count = Math.max(2, rule.leastPulls); count <= MOST_PULLS; count += 1) {
    const freedom = count - 1 + (pooled?.degreesOfFreedom ?? 0);
    const spread = chiSquareQuantile(1 - rule.confidenceRatio, freedom);
    const factor = z * Math.sqrt((freedom * (1 + 1 / count)) / spread);
    if (factor * interval.sd <= roomKpa) return count;
  }
  return null;
}
