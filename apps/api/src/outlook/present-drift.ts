import type { DriftAlarm, PresetDrift } from '@pullbook/contracts';
import type { FollowedDrift } from '@pullbook/tuning-math';
import type { FollowedHistory } from './follow-history.js';
import type { HistoryPull, PresetHistory } from './load-history.js';
import { noteDrift, sayDrift } from './say-drift.js';

/** A preset's drift as the API tells it. */
export function presentDrift(history: PresetHistory, followed: FollowedHistory): PresetDrift {
  const { drift, baselineOf, recentPulls, shift } = followed;
  return {
    alarm: alarmOf(followed),
    driftPct: drift.driftPct,
    baselineVisitId: baselineOf.id,
    baselineVisitNumber: baselineOf.number,
    baselineSignedOff: baselineOf.isSignedOff,
    centreKpa: drift.centreKpa,
    sdKpa: drift.sdKpa,
    singles: pointsOf(drift.singles, recentPulls),
    averages: pointsOf(drift.averages, recentPulls),
    possiblePct: shift.possiblePct,
    text: sayDrift(followed),
    notes: noteDrift(history, followed),
  };
}

/** The alarm that stands, with the rule that fired; null where none does. */
export function alarmOf(followed: FollowedHistory): DriftAlarm | null {
  const { drift, fired, mayBeConditions } = followed;
  if (fired === null || drift.rule === null) return null;
  return {
    rule: drift.rule,
    driftPct: drift.driftPct,
    pullId: fired.row.id,
    visitId: fired.row.visitId,
    visitNumber: fired.row.visit.number,
    pullNumber: fired.row.number,
    mayBeConditions,
    text: sayDrift(followed),
  };
}

function pointsOf(
  points: FollowedDrift['drift']['singles'],
  pulls: readonly HistoryPull[],
): PresetDrift['singles'] {
  return points.flatMap(({ plotted, low, high, isOut }, index) => {
    const pull = pulls[index];
    if (pull === undefined) return [];
    return [{ pullId: pull.row.id, plottedKpa: plotted, lowKpa: low, highKpa: high, isOut }];
  });
}
