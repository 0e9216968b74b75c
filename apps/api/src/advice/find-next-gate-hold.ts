import { cautionsBeforePulling, type GateHoldAdvice, type NextGateHold } from '@pullbook/contracts';
import { foundSoundAfter, soundPulls } from '@pullbook/next-pull';
import { adviseGateHold, ArgumentError, type GateHoldRequest } from '@pullbook/tuning-math';
import type { Actor } from '../plumbing/actor.js';
import type { PresetPull, PresetRecord } from '../presets/load-presets.js';
import { adviceOf } from '../presets/present-preset.js';
import { presentGateHoldAdvice } from './advise-hold.js';
import { loadBenchPreset } from './load-bench-preset.js';
import { missingBeforePull } from './missing-before-pull.js';
import { readAdviceRules, type WorkshopRules } from './read-advice-rules.js';

/** A standing pull of the visit as the search for the gate hold sees it. */
interface HoldPullRecord extends PresetPull {
  readonly settledKpa: number | null;
  readonly riseTimeS: number | null;
  readonly onsetRpm: number | null;
}

/** A pull that the search can rest on. */
type CountedPull = HoldPullRecord & { readonly holdPct: number; readonly settledKpa: number };

const SAME_PCT = 0.01;

/**
 * The next gate hold of a preset in a tuning session, or what is missing before there may be one. It rests on the
 * usable pulls of this visit at the duty that the preset keeps, and never leaves the controller's range.
 *
 * @throws DomainError not-found, preset-not-of-this-car
 */
export async function findNextGateHold(
  actor: Actor,
  sessionId: string,
  presetId: string,
): Promise<NextGateHold> {
  const { session, preset } = await loadBenchPreset(actor.db, sessionId, presetId);
  const rules = await readAdviceRules(actor);
  const standing = await standingPulls(actor, session.visit.id, presetId);
  const { dutyPct, gateHoldPct } = preset.values;
  const atDuty = standing.filter(
    (pull) => pull.usable && dutyPct !== null && Math.abs(pull.dutyPct - dutyPct) <= SAME_PCT,
  );
  const counted = atDuty.filter(isCounted);
  const asked = askMath(preset, rules, { counted, standing });
  const visitPreset = { ...preset, pulls: standing };
  const missing = [
    ...asked.missing,
    ...missingOfDuty(visitPreset, rules, counted.length > 0),
    ...missingBeforePull(preset, session),
  ];
  const holds = counted.map((pull) => pull.holdPct);
  return {
    ready: missing.length === 0,
    missing,
    cautions: [...cautionsBeforePulling],
    advice: missing.length === 0 ? asked.advice : null,
    dutyPct,
    keptHoldPct: gateHoldPct,
    highestHoldPct: holds.length === 0 ? null : Math.max(...holds),
    range: preset.car.controller?.holdPct ?? null,
    stepLimit: rules.stepLimit,
    riskLimit: rules.riskLimit,
    overshootLimitPct: rules.overshootLimitPct,
    restsOnPulls: counted.map((pull) => pull.number),
    provingPullNumbers: asked.provedBy.flatMap((index) => counted[index]?.number ?? []),
    foundSoundAfterPull: foundSoundAfter(standing),
    notCountedPulls: atDuty.filter((pull) => !isCounted(pull)).map((pull) => pull.number),
  };
}

function isCounted(pull: HoldPullRecord): pull is CountedPull {
  return pull.holdPct !== null && pull.settledKpa !== null;
}

function standingPulls({ db }: Actor, visitId: string, presetId: string): Promise<HoldPullRecord[]> {
  return db.pull.findMany({ where: { visitId, presetId, voidedAt: null }, orderBy: { number: 'asc' } });
}

interface Asked {
  readonly advice: GateHoldAdvice | null;
  readonly missing: string[];
  readonly provedBy: readonly number[];
}

/** The pulls that the search rests on, and all that stand: the car may have been looked over after any of them. */
interface HoldPulls {
  readonly counted: readonly CountedPull[];
  readonly standing: readonly HoldPullRecord[];
}

function askMath(preset: PresetRecord, rules: WorkshopRules, pulls: HoldPulls): Asked {
  const request = requestOf(preset, rules, pulls);
  if (typeof request === 'string') return { advice: null, missing: [request], provedBy: [] };
  try {
    const answer = adviseGateHold(request);
    return { advice: presentGateHoldAdvice(answer), missing: [], provedBy: answer.provedBy };
  } catch (error) {
    if (!(error instanceof ArgumentError)) throw error;
    return { advice: null, missing: [`no advice is possible: ${error.message}`], provedBy: [] };
  }
}

/** What the math is asked, or in plain words what it cannot be asked without. */
function requestOf(
  { values, car }: PresetRecord,
  rules: WorkshopRules,
  { counted, standing }: HoldPulls,
): GateHoldRequest | string {
  const range = car.controller?.holdPct ?? null;
  if (range === null) return "this car's controller has no gate hold";
  const { targetKpa, toleranceKpa, ceilingKpa } = values;
  if (targetKpa === null || ceilingKpa === null) return 'agree target and ceiling of this preset';
  return {
    controller: { holdMin: range.min, holdMax: range.max, holdStep: range.step },
    goal: { targetKpa, toleranceKpa, ceilingKpa, overshootLimitPct: rules.overshootLimitPct },
    stepLimit: rules.stepLimit,
    riskLimit: rules.riskLimit,
    pulls: counted.map(({ holdPct, peakKpa, settledKpa, riseTimeS, onsetRpm }) => ({
      ...{ holdPct, settledKpa, riseTimeS, onsetRpm },
      peakKpa: Math.max(0, peakKpa),
    })),
    ...soundPulls(standing, counted),
  };
}

/** The search begins once the advice accepts the duty that the preset keeps, and goes on unless it says stop. */
function missingOfDuty(preset: PresetRecord, rules: WorkshopRules, hasBegun: boolean): string[] {
  const { dutyPct } = preset.values;
  if (dutyPct === null) return ['find the duty first, and keep it'];
  const { advice, acceptedDutyPct } = adviceOf(preset, rules);
  if (advice?.action === 'stop') return [advice.reasons[0]?.text ?? 'the advice for duty says stop'];
  if (hasBegun || acceptedDutyPct === dutyPct) return [];
  return [`confirm the duty of ${dutyPct} % in this visit first`];
}
