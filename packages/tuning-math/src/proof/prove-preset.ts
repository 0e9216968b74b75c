import { OutOfRangeError } from '../errors.js';
import { requireNumber } from '../require-number.js';
import { toleranceInterval, type ToleranceInterval } from '../statistics/tolerance-interval.js';
import { findProofGaps } from './find-proof-gaps.js';
import { isCounted } from './is-counted.js';
import { pullsLikelyNeeded } from './pulls-likely-needed.js';
import {
  DEFAULT_PROOF_RULE,
  type PresetProof,
  type ProofRequest,
  type ProofRule,
  type ProofState,
} from './proof-types.js';

const NAME = 'provePreset';

/**
 * Whether a preset revision is proven, and what is missing if not: with the confidence asked for, the share
 * asked for of all future pulls lies inside target ± tolerance and under the ceiling, shown by enough usable
 * pulls, one of them heat-soaked, none past the ceiling. Use it wherever a state is shown or signed.
 *
 * @param request goal, pulls without the void ones, the workshop's rule, its pooled repeatability if known
 * @returns state, what is missing in plain words, tolerance interval and counts
 * @throws NotFiniteError, OutOfRangeError naming the field
 * Source: ISO 16269-6:2014 tolerance interval, two-sided; the rest of the rule is common practice, no source.
 * It presumes that peaks scatter normally and independently: pulls in quick succession on one day look
 * better than the year will be, which is why one must be heat-soaked. A timed override has its own proof: its
 * own target and ceiling, and only pulls made with the override on, one of which shows it end in time.
 */
export function provePreset(request: ProofRequest): PresetProof {
  const rule = checkRequest(request);
  const usable = request.pulls.filter((pull) => isCounted(pull, request.kind));
  const peaks = usable.map((pull) => pull.peakKpa);
  const interval = intervalOf(peaks, rule, request);
  const missing = findProofGaps(request, rule, interval);
  const isProven = missing.length === 0;
  const allPeaks = request.pulls.map((pull) => pull.peakKpa);
  return {
    state: stateOf(request, isProven),
    isProven,
    missing,
    interval,
    usablePulls: usable.length,
    heatSoakedPulls: usable.filter((pull) => pull.isHeatSoaked).length,
    highestPeakKpa: allPeaks.length === 0 ? null : Math.max(...allPeaks),
    pullsLikelyNeeded: pullsLikelyNeeded(request, rule, interval),
  };
}

function stateOf(request: ProofRequest, isProven: boolean): ProofState {
  if (request.isReplaced === true) return 'replaced';
  if (request.isSignedOff === true) return 'signed-off';
  if (isProven) return 'proven';
  return request.goal !== null && request.pulls.length > 0 ? 'on-test' : 'draft';
}

function intervalOf(
  peaks: readonly number[],
  { coverageRatio, confidenceRatio }: ProofRule,
  { pooled }: ProofRequest,
): ToleranceInterval | null {
  if (peaks.length < (pooled === undefined ? 2 : 1)) return null;
  const options = { coverageRatio, confidenceRatio, sides: 'two' } as const;
  return toleranceInterval(peaks, pooled === undefined ? options : { ...options, pooled });
}

function checkRequest(request: ProofRequest): ProofRule {
  const rule = { ...DEFAULT_PROOF_RULE, ...request.rule };
  const open = { min: 0, max: 1, exclusive: true };
  requireNumber(NAME, 'rule.coverageRatio', rule.coverageRatio, open);
  requireNumber(NAME, 'rule.confidenceRatio', rule.confidenceRatio, open);
  requireNumber(NAME, 'rule.leastPulls', rule.leastPulls, { min: 1, max: 100, integer: true });
  request.pulls.forEach((pull, index) => {
    requireNumber(NAME, `pulls[${index}].peakKpa`, pull.peakKpa, { min: 0, max: 1000 });
    if (typeof pull.heldForS === 'number')
      requireNumber(NAME, `pulls[${index}].heldForS`, pull.heldForS, { min: 0 });
  });
  if (typeof request.holdSeconds === 'number') {
    requireNumber(NAME, 'holdSeconds', request.holdSeconds, { min: 0, exclusive: true });
  }
  if (request.goal !== null) checkGoal(request.goal);
  return rule;
}

function checkGoal(goal: NonNullable<ProofRequest['goal']>): void {
  requireNumber(NAME, 'goal.targetKpa', goal.targetKpa, { min: 1, max: 600 });
  requireNumber(NAME, 'goal.toleranceKpa', goal.toleranceKpa, { min: 0.01, max: goal.targetKpa });
  requireNumber(NAME, 'goal.ceilingKpa', goal.ceilingKpa, { max: 1000 });
  if (goal.ceilingKpa > goal.targetKpa) return;
  const allowed = `to lie above goal.targetKpa, ${goal.targetKpa}`;
  throw new OutOfRangeError(NAME, { argument: 'goal.ceilingKpa', value: goal.ceilingKpa, allowed });
}
