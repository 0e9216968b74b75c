import { followDrift, type FollowedDrift } from '@pullbook/tuning-math';
import type { HistoryPull, HistoryVisit, PresetHistory } from './load-history.js';

/** A preset's drift with the pulls that it was found in. */
export interface FollowedHistory extends FollowedDrift {
  readonly baselineOf: HistoryVisit;
  readonly baselinePulls: readonly HistoryPull[];
  readonly recentPulls: readonly HistoryPull[];
  /** Pull at which a rule fired first. */
  readonly fired: HistoryPull | null;
  /** Other weather than the baseline's, not corrected for, may explain the alarm. */
  readonly mayBeConditions: boolean;
}

/** So many standard deviations of what the weather may do are still put down to it. */
const WEATHER_SIGMAS = 2;

/** Follows the drift of a preset over its visits; null where no visit proves it or signs it off. */
export function followHistory({ visits, spread }: PresetHistory): FollowedHistory | null {
  const followed = followDrift(visits, spread);
  const baselineOf = visits[followed?.baselineVisit ?? -1];
  if (followed === null || baselineOf === undefined) return null;
  const recentPulls = visits.slice(followed.baselineVisit + 1).flatMap(({ pulls }) => pulls);
  const { firedAt } = followed.drift;
  const fired = firedAt === null ? null : (recentPulls[firedAt] ?? null);
  const reachPct = WEATHER_SIGMAS * followed.shift.possiblePct;
  return {
    ...followed,
    baselineOf,
    baselinePulls: baselineOf.pulls,
    recentPulls,
    fired,
    mayBeConditions: fired !== null && Math.abs(observedPct(followed, recentPulls, fired)) <= reachPct,
  };
}

/** What the rule saw: the pull that jumped, or the mean of the visit in which the average left its limits. */
function observedPct(
  { drift, recent }: FollowedDrift,
  recentPulls: readonly HistoryPull[],
  fired: HistoryPull,
): number {
  const isOfRule = (pull: HistoryPull): boolean =>
    drift.rule === 'shewhart-single-pull' ? pull === fired : pull.row.visitId === fired.row.visitId;
  const peaksKpa = recent.flatMap((peak, index) => {
    const pull = recentPulls[index];
    return pull !== undefined && isOfRule(pull) ? [peak.peakKpa] : [];
  });
  const meanKpa = peaksKpa.reduce((sum, peakKpa) => sum + peakKpa, 0) / peaksKpa.length;
  return 100 * (meanKpa / drift.centreKpa - 1);
}
