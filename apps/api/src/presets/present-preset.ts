import type { Preset } from '@pullbook/contracts';
import { advisePreset, type AdviceRules, type PresetAdvice } from '@pullbook/next-pull';
import type { PresetRecord } from './load-presets.js';
import { presentProof } from './present-proof.js';
import { presetStanding } from './preset-standing.js';
import { sayMissing } from './say-missing.js';
import type { WorkshopRules } from '../advice/read-advice-rules.js';

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
export function presentPreset(record: PresetRecord, rules: WorkshopRules): Preset {
  const standing = presetStanding(record, rules, adviceOf(record, rules));
  return {
    id: record.id,
    carId: record.car.id,
    ...record.values,
    state: standing.state,
    missing: sayMissing(standing, rules.requiredPulls),
    proof: presentProof(standing, record, rules),
    drift: record.drift,
    revision: record.revision,
    createdAt: record.createdAt.toISOString(),
  };
}
