import type { PresetForecast } from '@pullbook/contracts';
import { fitConditions, usualConditions } from '@pullbook/tuning-math';
import type { WorkshopRules } from '../advice/read-advice-rules.js';
import { forecastGrids } from './forecast-grids.js';
import type { FollowedHistory } from './follow-history.js';
import type { HistoryPull, PresetHistory } from './load-history.js';
import { noteForecast } from './note-forecast.js';
import { count, noteHold } from './say-drift.js';

const LEVEL = 0.95;
/** More pulls would not sharpen a forecast further. */
const MOST_PULLS = 500;

/** Why there is no forecast; null where there can be one. */
export function sayNoForecast({ preset, visits }: PresetHistory): string | null {
  const { ceilingKpa, targetKpa, dutyPct } = preset.values;
  if (ceilingKpa === null) return 'Agree a ceiling first: a forecast without one says nothing that matters.';
  if (targetKpa === null) return 'Agree a target first.';
  if (dutyPct === null) return 'No duty is stored yet: a forecast is for stored settings.';
  return visits.length === 0 ? 'No usable pull at the stored settings is on record.' : null;
}

/**
 * What a preset will peak at in other conditions; null where `sayNoForecast` says why not. Rests on the pulls at the
 * stored settings from the baseline on; while a drift alarm stands, on the newest visit's alone.
 */
export function forecastHistory(
  history: PresetHistory,
  followed: FollowedHistory | null,
  { riskLimit }: Pick<WorkshopRules, 'riskLimit'>,
): PresetForecast | null {
  const { ceilingKpa } = history.preset.values;
  if (ceilingKpa === null || sayNoForecast(history) !== null) return null;
  const { pulls, why } = pullsToRestOn(history, followed);
  const model = fitConditions(pulls, usualConditions(pulls.map(({ conditions }) => conditions)));
  return {
    ceilingKpa,
    riskLimit,
    level: LEVEL,
    pullIds: pulls.map(({ row }) => row.id),
    reference: { ...model.reference },
    effects: model.effects.map((effect) => ({ ...effect })),
    grids: forecastGrids(model, ceilingKpa, LEVEL),
    notes: [`Rests on ${count(pulls.length)} ${why}.`, ...noteForecast(history, model), ...noteHold(history)],
  };
}

function pullsToRestOn(
  { visits }: PresetHistory,
  followed: FollowedHistory | null,
): { pulls: readonly HistoryPull[]; why: string } {
  const newest = visits.at(-1);
  if (followed === null || newest === undefined) {
    const pulls = visits.flatMap((visit) => visit.pulls).slice(-MOST_PULLS);
    return { pulls, why: 'at the stored settings, which no visit proves yet' };
  }
  if (followed.fired !== null) {
    const why = `of visit ${newest.number} alone: while the drift alarm stands, older ones do not count`;
    return { pulls: newest.pulls, why };
  }
  const pulls = [...followed.baselinePulls, ...followed.recentPulls].slice(-MOST_PULLS);
  return { pulls, why: `at the stored settings since visit ${followed.baselineOf.number}` };
}
