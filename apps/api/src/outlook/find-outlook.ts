import type { OutlookPull, PresetOutlook } from '@pullbook/contracts';
import type { ReferencePeak } from '@pullbook/tuning-math';
import { readAdviceRules } from '../advice/read-advice-rules.js';
import type { Actor } from '../plumbing/actor.js';
import { loadPreset } from '../presets/load-presets.js';
import { followHistory, type FollowedHistory } from './follow-history.js';
import { forecastHistory, sayNoForecast } from './forecast-history.js';
import { loadHistory, type HistoryPull, type PresetHistory } from './load-history.js';
import { presentDrift } from './present-drift.js';
import { sayNotWatched } from './say-drift.js';

/**
 * How a preset has aged and what it will do in other conditions, from its usable pulls at the stored settings.
 *
 * @throws DomainError not-found
 */
export async function findOutlook(actor: Actor, presetId: string): Promise<PresetOutlook> {
  const preset = await loadPreset(actor.db, presetId);
  const rules = await readAdviceRules(actor);
  const history = await loadHistory(actor.db, preset, rules);
  const followed = followHistory(history);
  const { name, dutyPct, gateHoldPct, targetKpa, toleranceKpa, ceilingKpa } = preset.values;
  return {
    presetId,
    carId: preset.car.id,
    revision: preset.revision,
    ...{ name, dutyPct, gateHoldPct, targetKpa, toleranceKpa, ceilingKpa },
    pulls: presentPulls(history, followed),
    reference: followed && { ...followed.model.reference },
    drift: followed && presentDrift(history, followed),
    driftMissing: followed === null ? sayNotWatched(history) : null,
    forecast: forecastHistory(history, followed, rules),
    forecastMissing: sayNoForecast(history),
  };
}

function presentPulls({ visits }: PresetHistory, followed: FollowedHistory | null): OutlookPull[] {
  const all = visits.flatMap(({ pulls }) => pulls);
  if (followed === null) return all.map((pull) => presentPull(pull, 'before', null));
  const { baselinePulls, recentPulls, baseline, recent } = followed;
  const older = all.slice(0, all.length - baselinePulls.length - recentPulls.length);
  return [
    ...older.map((pull) => presentPull(pull, 'before', null)),
    ...baselinePulls.map((pull, index) => presentPull(pull, 'baseline', baseline[index] ?? null)),
    ...recentPulls.map((pull, index) => presentPull(pull, 'since', recent[index] ?? null)),
  ];
}

function presentPull(
  { row, conditions }: HistoryPull,
  part: OutlookPull['part'],
  reference: ReferencePeak | null,
): OutlookPull {
  return {
    pullId: row.id,
    visitId: row.visitId,
    visitNumber: row.visit.number,
    tuningSessionId: row.tuningSessionId,
    number: row.number,
    recordedAt: row.recordedAt.toISOString(),
    peakKpa: row.peakKpa,
    ...conditions,
    referenceKpa: reference?.peakKpa ?? null,
    correctionUncertaintyKpa: reference?.correctionUncertaintyKpa ?? null,
    notCorrectedFor: [...(reference?.notCorrectedFor ?? [])],
    part,
  };
}
