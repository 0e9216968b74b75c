import type { PresetAdvice } from '@pullbook/next-pull';
import {
  ArgumentError,
  derivePresetStanding,
  type PresetStanding,
  type PresetStandingRequest,
} from '@pullbook/tuning-math';
import type { WorkshopRules } from '../advice/read-advice-rules.js';
import type { PresetPull, PresetRecord } from './load-presets.js';

/** Enough for every preset of a full yard several times over. */
const MOST_KEPT = 2000;
const kept = new Map<string, PresetStanding>();

/**
 * Where a preset stands by the data: draft, on test, proven (ISO 16269-6), signed off or replaced, and what is missing.
 * Computed once for each distinct request: boards and lists ask the same again and again.
 *
 * @param asked what the advice says of it: while it says stop, nothing is proven; null where it was not asked
 */
export function presetStanding(
  record: PresetRecord,
  rules: WorkshopRules,
  asked: PresetAdvice | null,
): PresetStanding {
  const request = requestOf(record, rules, asked);
  const key = JSON.stringify(request);
  const known = kept.get(key);
  if (known !== undefined) return known;
  const standing = derive(request);
  const oldest = kept.keys().next();
  if (kept.size >= MOST_KEPT && oldest.done !== true) kept.delete(oldest.value);
  kept.set(key, standing);
  return standing;
}

/** Figures that no proof may rest on leave the preset on test, with the reason in words. */
function derive(request: PresetStandingRequest): PresetStanding {
  try {
    return derivePresetStanding(request);
  } catch (error) {
    if (!(error instanceof ArgumentError)) throw error;
    const missing = [{ code: 'no-goal', text: `No proof is possible: ${error.message}.` } as const];
    return { state: 'on-test', missing, proof: null, atSettings: [] };
  }
}

function requestOf(
  record: PresetRecord,
  rules: WorkshopRules,
  asked: PresetAdvice | null,
): PresetStandingRequest {
  const { values, pulls, spreads } = record;
  const stop = asked?.advice?.action === 'stop' ? asked.advice.reasons[0] : undefined;
  return {
    isReplaced: record.isReplaced,
    revision: record.revision,
    signedOffRevision: record.signedOffRevision,
    hasController: record.car.controller !== null,
    kind: values.kind,
    holdSeconds: values.holdSeconds,
    targetKpa: values.targetKpa,
    toleranceKpa: values.toleranceKpa,
    ceilingKpa: values.ceilingKpa,
    dutyPct: values.dutyPct,
    gateHoldPct: values.gateHoldPct,
    acceptedDutyPct: asked?.acceptedDutyPct ?? null,
    stopText: stop?.text ?? null,
    pulls: pulls.map(setPullOf),
    rule: {
      leastPulls: rules.requiredPulls,
      coverageRatio: rules.coverageRatio,
      confidenceRatio: rules.confidenceRatio,
    },
    pooled: values.targetKpa === null ? undefined : pooledOf(spreads, values.targetKpa),
  };
}

function setPullOf(pull: PresetPull): PresetStandingRequest['pulls'][number] {
  return {
    dutyPct: pull.dutyPct,
    holdPct: pull.holdPct,
    // A recorded peak below ambient made no boost at all.
    peakKpa: Math.max(0, pull.peakKpa),
    isUsable: pull.usable,
    isHeatSoaked: pull.heatSoaked,
    isOverrideOn: pull.overrideOn,
    heldForS: pull.heldForS,
  };
}

/** The scatter of this very preset on earlier visits, as it would be at the target. */
function pooledOf(spreads: PresetRecord['spreads'], targetKpa: number): PresetStandingRequest['pooled'] {
  const degreesOfFreedom = spreads.reduce((sum, spread) => sum + spread.degreesOfFreedom, 0);
  if (degreesOfFreedom < 1) return undefined;
  const squares = spreads.reduce((sum, spread) => sum + spread.squares, 0);
  return { sd: targetKpa * Math.sqrt(squares / degreesOfFreedom), degreesOfFreedom };
}
