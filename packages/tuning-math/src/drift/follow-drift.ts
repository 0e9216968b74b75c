import { fitConditions } from '../conditions/fit-conditions.js';
import { peaksAtReference, type ReferencePeak } from '../conditions/peaks-at-reference.js';
import { shiftByConditions, type ConditionShift } from '../conditions/shift-by-conditions.js';
import { usualConditions } from '../conditions/usual-conditions.js';
import type { ConditionedPull, ConditionsModel } from '../conditions/conditions-types.js';
import { requireNumber } from '../require-number.js';
import { COMMON_SCATTER_PULLS, COMMON_SCATTER_RATIO, findDrift, type Drift } from './find-drift.js';

/** What one visit says of a preset at the settings that are followed. */
export interface FollowedVisit {
  /** Usable pulls at these settings, in order of time. */
  readonly pulls: readonly ConditionedPull[];
  /** Whether the preset was signed off in it at these settings. */
  readonly isSignedOff: boolean;
  /** Whether these pulls prove the preset. */
  readonly isProof: boolean;
}

/** Scatter of the same preset's other pulls, setting by setting and visit by visit, relative to their means. */
export interface RelativeSpread {
  readonly squares: number;
  readonly degreesOfFreedom: number;
}

/** How a preset has aged since the visit that it is held against. */
export interface FollowedDrift {
  /** Position of the visit whose pulls later ones are held against. */
  readonly baselineVisit: number;
  /** Fitted on the baseline's pulls alone: a model that saw the later ones would explain the drift away. */
  readonly model: ConditionsModel;
  readonly baseline: readonly ReferencePeak[];
  /** Pulls of later visits, in order of time. */
  readonly recent: readonly ReferencePeak[];
  readonly drift: Drift;
  /** How far the weather alone may have moved the recent pulls of the visit in which the alarm fired, or of all. */
  readonly shift: ConditionShift;
}

const LEAST_PULLS = 2;
const NO_SPREAD: RelativeSpread = { squares: 0, degreesOfFreedom: 0 };

/**
 * Drift of a preset over its visits. The first visit that proved it or was signed off is the baseline, and stays it
 * over later sign-offs, so that a slow creep adds up; a sign-off while the alarm stands makes its own visit the new
 * baseline, since somebody looked and signed.
 *
 * @param visits in order of time, pulls at one and the same setting only
 * @param spread the workshop's own repeatability with this preset; counts beside common practice, never instead
 * @returns null where no visit with 2 pulls proves the preset or signs it off: then nothing is watched
 * @throws NotFiniteError, OutOfRangeError
 * Cost: O(visits · pulls). Source: `findDrift`; the choice of the baseline is common practice, no source.
 */
export function followDrift(
  visits: readonly FollowedVisit[],
  spread: RelativeSpread = NO_SPREAD,
): FollowedDrift | null {
  requireNumber('followDrift', 'spread.squares', spread.squares, { min: 0 });
  requireNumber('followDrift', 'spread.degreesOfFreedom', spread.degreesOfFreedom, { min: 0 });
  const isBase = ({ pulls, isSignedOff, isProof }: FollowedVisit): boolean =>
    (isSignedOff || isProof) && pulls.length >= LEAST_PULLS;
  let baselineVisit = visits.findIndex(isBase);
  if (baselineVisit === -1) return null;
  let followed = follow(visits.slice(0, baselineVisit + 1), baselineVisit, spread);
  for (let end = baselineVisit + 2; end <= visits.length; end += 1) {
    followed = follow(visits.slice(0, end), baselineVisit, spread);
    const newest = visits[end - 1];
    if (!followed.drift.isDrifting || newest?.isSignedOff !== true) continue;
    if (newest.pulls.length < LEAST_PULLS) continue;
    baselineVisit = end - 1;
    followed = follow(visits.slice(0, end), baselineVisit, spread);
  }
  return followed;
}

function follow(
  visits: readonly FollowedVisit[],
  baselineVisit: number,
  { squares, degreesOfFreedom }: RelativeSpread,
): FollowedDrift {
  const base = visits[baselineVisit]?.pulls ?? [];
  const later = visits.slice(baselineVisit + 1);
  const since = later.flatMap(({ pulls }) => pulls);
  const model = fitConditions(base, usualConditions(base.map(({ conditions }) => conditions)));
  const baseline = peaksAtReference(model, base);
  const recent = peaksAtReference(model, since);
  const freedom = COMMON_SCATTER_PULLS + degreesOfFreedom;
  const ratio = Math.sqrt((COMMON_SCATTER_PULLS * COMMON_SCATTER_RATIO ** 2 + squares) / freedom);
  const drift = findDrift({
    baselineKpa: baseline.map(({ peakKpa }) => peakKpa),
    recentKpa: recent.map(({ peakKpa }) => peakKpa),
    pooled: { sd: ratio * model.scaleKpa, degreesOfFreedom: freedom },
  });
  const compared = drift.firedAt === null ? since : pullsOfVisitAt(later, drift.firedAt);
  const conditionsOf = (pulls: readonly ConditionedPull[]) => pulls.map(({ conditions }) => conditions);
  const shift = shiftByConditions(model, conditionsOf(base), conditionsOf(compared));
  return { baselineVisit, model, baseline, recent, drift, shift };
}

/** Pulls of the visit to which the pull at a position among all belongs. */
function pullsOfVisitAt(visits: readonly FollowedVisit[], position: number): readonly ConditionedPull[] {
  let before = 0;
  for (const { pulls } of visits) {
    before += pulls.length;
    if (position < before) return pulls;
  }
  return [];
}
