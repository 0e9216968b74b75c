import type { DriftRule } from '@pullbook/contracts';
import { formatNumber } from '@pullbook/tuning-math';
import { joinWords, listConditions, sayChange } from './condition-words.js';
import type { FollowedHistory } from './follow-history.js';
import type { HistoryPull, PresetHistory } from './load-history.js';

const ruleWords: Readonly<Record<DriftRule, string>> = {
  'shewhart-single-pull': 'a single pull outside its limits (Shewhart chart)',
  'ewma-moving-average': 'the moving average outside its limits (EWMA chart)',
};

/** The alarm, or that there is none, in one plain sentence. */
export function sayDrift(followed: FollowedHistory): string {
  const { drift, fired, baselineOf, recentPulls, mayBeConditions } = followed;
  const since = `visit ${baselineOf.number}`;
  if (recentPulls.length === 0) return `No pull at these settings since ${since}: nothing to compare yet.`;
  if (fired === null || drift.rule === null) {
    return `No drift since ${since}: ${count(recentPulls.length)} inside the limits of both charts.`;
  }
  const weather = mayBeConditions ? ' Other weather may explain it.' : '';
  return `Peaks ${sayPct(drift.driftPct)} since ${since}: ${ruleWords[drift.rule]}, ${placeOf(fired)}.${weather}`;
}

/** '4.2 % lower'. */
function sayPct(driftPct: number): string {
  return `${formatNumber(Math.abs(driftPct), 1)} % ${driftPct < 0 ? 'lower' : 'higher'}`;
}

function placeOf({ row }: HistoryPull): string {
  return `pull ${row.number} of visit ${row.visit.number}`;
}

/** What the verdict on drift rests on and what it leaves out. */
export function noteDrift(history: PresetHistory, followed: FollowedHistory): string[] {
  const { baselineOf, recentPulls } = followed;
  const how = baselineOf.isSignedOff ? 'signed off' : 'proven, not signed off';
  return [
    `Held against the ${count(baselineOf.pulls.length)} of visit ${baselineOf.number} (${how}).`,
    noteCorrection(followed),
    ...(recentPulls.length === 0 ? [] : noteShift(followed)),
    ...noteHold(history),
  ];
}

/** What changed from the baseline to the later pulls that nothing was corrected for. */
function noteShift({ shift: { uncorrected, notWritten, possiblePct } }: FollowedHistory): string[] {
  const changes = joinWords(uncorrected.map(sayChange));
  const size = formatNumber(possiblePct, 1);
  return [
    ...(uncorrected.length === 0
      ? []
      : [
          `Not corrected for: ${changes}. Common practice has it that this alone moves a peak by about ${size} % either way.`,
        ]),
    ...(notWritten.length === 0
      ? []
      : [`Not written down, so nobody can say whether it changed: ${listConditions(notWritten)}.`]),
  ];
}

/** The words are as true before any later pull as after it. */
function noteCorrection({ model }: FollowedHistory): string {
  const told = model.effects.filter(({ status }) => status !== 'unknown').map(({ condition }) => condition);
  const by = 'Conditions are estimated from the baseline alone';
  return told.length === 0
    ? `${by}: it does not tell what any of them does, so peaks stand as recorded.`
    : `${by}; peaks are corrected for ${listConditions(told)}.`;
}

/** What was taken for granted of pulls without a gate hold. */
export function noteHold({ withoutHoldCount }: PresetHistory): string[] {
  if (withoutHoldCount === 0) return [];
  return [`${count(withoutHoldCount)} without a gate hold on record: taken to be at the stored one.`];
}

/** Why drift is not watched yet. */
export function sayNotWatched({ preset, visits }: PresetHistory): string {
  if (preset.values.dutyPct === null) return 'No duty is stored yet: drift is watched once there is one.';
  const pulls = visits.reduce((sum, visit) => sum + visit.pulls.length, 0);
  if (pulls === 0) return 'No usable pull at the stored settings is on record.';
  return 'Drift is watched from the first visit on that proves these settings, or signs them off, with two usable pulls at them.';
}

/** '1 pull', '3 pulls'. */
export function count(pulls: number): string {
  return `${pulls} ${pulls === 1 ? 'pull' : 'pulls'}`;
}
