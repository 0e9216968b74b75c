import type { Preset } from '@pullbook/contracts';
import { advisePreset, type AdviceRules, type PresetAdvice } from '@pullbook/next-pull';
import type { PresetRecord } from './load-presets.js';
import { derivePresetState } from './preset-state.js';

/** What the advice says of a preset on the pulls that count for it. */
export function adviceOf(record: PresetRecord, rules: AdviceRules): PresetAdvice {
  const { values, car, pulls } = record;
  return advisePreset({
    dutyRange: car.controller?.dutyPct ?? null,
    targetKpa: values.targetKpa,
    toleranceKpa: values.toleranceKpa,
    ceilingKpa: values.ceilingKpa,
    gateHoldPct: values.gateHoldPct,
    baseKpa: car.baseKpa,
    rules,
    pulls,
  });
}

/** A preset as the API tells it, with its state derived from the data. */
export function presentPreset(record: PresetRecord, rules: AdviceRules): Preset {
  const { state, missing } = derivePresetState({
    isReplaced: record.isReplaced,
    revision: record.revision,
    signedOffRevision: record.signedOffRevision,
    hasController: record.car.controller !== null,
    targetKpa: record.values.targetKpa,
    ceilingKpa: record.values.ceilingKpa,
    dutyPct: record.values.dutyPct,
    pullCount: record.pulls.length,
    acceptedDutyPct: adviceOf(record, rules).acceptedDutyPct,
  });
  return {
    id: record.id,
    carId: record.car.id,
    ...record.values,
    state,
    missing,
    revision: record.revision,
    createdAt: record.createdAt.toISOString(),
  };
}
