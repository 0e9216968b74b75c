import { formatNumber } from '../units/format-number.js';
import type { BoostGoal } from '../duty/duty-advice-types.js';
import type { ToleranceInterval } from '../statistics/tolerance-interval.js';
import { isCounted } from './is-counted.js';
import type { ProofGap, ProofPull, ProofRequest, ProofRule } from './proof-types.js';

/** A controller's clock and a person's reading of the trace: an override may seem to last this much longer, s. */
const CLOCK_SLACK_S = 0.5;

const kpa = (value: number): string => `${formatNumber(value, 1)} kPa`;

/** Everything that keeps a preset from being proven, the gravest first. */
export function findProofGaps(
  request: ProofRequest,
  rule: ProofRule,
  interval: ToleranceInterval | null,
): ProofGap[] {
  const { goal, pulls } = request;
  if (goal === null) {
    return [{ code: 'no-goal', text: 'Target, tolerance and ceiling are not agreed yet.' }];
  }
  if (pulls.length === 0) return [{ code: 'no-pull', text: 'No pull has been recorded yet.' }];
  const usable = pulls.filter((pull) => isCounted(pull, request.kind));
  return [
    ceilingGap(pulls, goal),
    kindGap(request, usable.length),
    countGap(usable.length, rule),
    heatGap(usable, rule),
    interval === null ? null : intervalGap(interval, goal, rule),
    ...overrideGaps(request, rule, usable),
  ].filter((gap) => gap !== null);
}

function ceilingGap(pulls: readonly ProofPull[], { ceilingKpa }: BoostGoal): ProofGap | null {
  const passed = pulls.filter((pull) => pull.peakKpa > ceilingKpa);
  if (passed.length === 0) return null;
  const highest = Math.max(...passed.map((pull) => pull.peakKpa));
  const count = passed.length === 1 ? 'A pull has' : `${passed.length} pulls have`;
  const text = `${count} passed the ceiling of ${kpa(ceilingKpa)}; the highest peak was ${kpa(highest)}.`;
  return { code: 'ceiling-passed', text };
}

/** Pulls are there, but every one of them was made with the override off. */
function kindGap({ kind, pulls }: ProofRequest, counted: number): ProofGap | null {
  if (kind !== 'timed-override' || counted > 0 || !pulls.some((pull) => pull.isUsable)) return null;
  return { code: 'no-override-pull', text: 'No usable pull was made with the timed override on.' };
}

function countGap(count: number, { leastPulls }: ProofRule): ProofGap | null {
  if (count >= leastPulls) return null;
  const text = `${count} of the ${leastPulls} usable pulls that are asked for.`;
  return { code: 'too-few-pulls', text };
}

function heatGap(usable: readonly ProofPull[], { needsHeatSoaked }: ProofRule): ProofGap | null {
  if (!needsHeatSoaked || usable.some((pull) => pull.isHeatSoaked)) return null;
  return { code: 'no-heat-soaked-pull', text: 'No usable pull was made with the car heat-soaked.' };
}

/** Off target when a perfect scatter would not help; too wide otherwise. */
function intervalGap(interval: ToleranceInterval, goal: BoostGoal, rule: ProofRule): ProofGap | null {
  const { low, high, mean } = interval;
  const floorKpa = goal.targetKpa - goal.toleranceKpa;
  const roofKpa = Math.min(goal.targetKpa + goal.toleranceKpa, goal.ceilingKpa);
  if (low !== null && high !== null && low >= floorKpa && high <= roofKpa) return null;
  if (mean < floorKpa || mean > roofKpa) {
    const text = `The mean peak, ${kpa(mean)}, lies outside ${kpa(floorKpa)} to ${kpa(roofKpa)}.`;
    return { code: 'mean-off-target', text };
  }
  const share = `${formatNumber(100 * rule.coverageRatio, 0)} % of all pulls`;
  const range = `${kpa(low ?? mean)} to ${kpa(high ?? mean)}`;
  const text = `So far ${share} can only be promised within ${range}; asked for is ${kpa(floorKpa)} to ${kpa(roofKpa)}.`;
  return { code: 'scatter-too-wide', text };
}

function overrideGaps(
  { kind, holdSeconds }: ProofRequest,
  { needsOverrideEnd }: ProofRule,
  usable: readonly ProofPull[],
): (ProofGap | null)[] {
  if (kind !== 'timed-override') return [];
  const held = usable.flatMap((pull) => pull.heldForS ?? []);
  if (held.length === 0) {
    if (!needsOverrideEnd) return [];
    const text = 'No usable pull shows how long the override holds before boost falls back.';
    return [{ code: 'override-end-not-seen', text }];
  }
  const longest = Math.max(...held);
  if (typeof holdSeconds !== 'number' || longest <= holdSeconds + CLOCK_SLACK_S) return [];
  const seconds = `${formatNumber(longest, 1)} s`;
  const text = `The override was seen to hold ${seconds}; it is set to ${formatNumber(holdSeconds, 1)} s.`;
  return [{ code: 'override-holds-too-long', text }];
}
