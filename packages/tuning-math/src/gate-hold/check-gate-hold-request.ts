import { OutOfRangeError } from '../errors.js';
import { DEFAULT_RISK_LIMIT, DEFAULT_STEP_LIMIT } from '../duty/check-duty-request.js';
import { requireNumber } from '../require-number.js';
import type { GateHoldRequest, HoldPull } from './gate-hold-types.js';

const NAME = 'adviseGateHold';
const MOST_PULLS = 200;

/** A request with its defaults filled in and every figure known to make sense. */
export interface CheckedRequest extends GateHoldRequest {
  readonly stepLimit: number;
  readonly riskLimit: number;
  readonly confidenceRatio: number;
  readonly soundPulls: number;
}

/** Refuses a request that no advice can rest on, naming the field. @throws NotFiniteError, OutOfRangeError */
export function checkGateHoldRequest(request: GateHoldRequest): CheckedRequest {
  checkController(request);
  checkGoal(request);
  const stepLimit = requireNumber(NAME, 'stepLimit', request.stepLimit ?? DEFAULT_STEP_LIMIT, {
    min: 0.1,
    max: 100,
  });
  const riskLimit = requireNumber(NAME, 'riskLimit', request.riskLimit ?? DEFAULT_RISK_LIMIT, {
    min: 1e-6,
    max: 0.5,
  });
  const confidenceRatio = requireNumber(NAME, 'confidenceRatio', request.confidenceRatio ?? 0.6, {
    min: 0.5,
    max: 0.99,
  });
  if (request.pulls.length > MOST_PULLS) {
    const fault = {
      argument: 'pulls',
      value: `${request.pulls.length} of them`,
      allowed: `to be at most ${MOST_PULLS}`,
    };
    throw new OutOfRangeError(NAME, fault);
  }
  request.pulls.forEach((pull, index) => checkPull(request, pull, index));
  return { ...request, stepLimit, riskLimit, confidenceRatio, soundPulls: checkedSoundPulls(request) };
}

function checkedSoundPulls({ soundPulls = 0, pulls }: GateHoldRequest): number {
  const limits = { min: 0, max: pulls.length, integer: true };
  return requireNumber(NAME, 'soundPulls', soundPulls, limits);
}

function checkController({ controller }: GateHoldRequest): void {
  requireNumber(NAME, 'controller.holdMin', controller.holdMin, { min: 0, max: 200 });
  requireNumber(NAME, 'controller.holdMax', controller.holdMax, { min: controller.holdMin, max: 200 });
  requireNumber(NAME, 'controller.holdStep', controller.holdStep, { min: 0.01, max: 100 });
}

function checkGoal({ goal }: GateHoldRequest): void {
  requireNumber(NAME, 'goal.targetKpa', goal.targetKpa, { min: 1, max: 600 });
  requireNumber(NAME, 'goal.toleranceKpa', goal.toleranceKpa, { min: 0.01, max: goal.targetKpa });
  requireNumber(NAME, 'goal.overshootLimitPct', goal.overshootLimitPct, { min: 0.1, max: 30 });
  requireNumber(NAME, 'goal.ceilingKpa', goal.ceilingKpa, { max: 1000 });
  if (goal.ceilingKpa <= goal.targetKpa) {
    const allowed = `to lie above goal.targetKpa, ${goal.targetKpa}`;
    throw new OutOfRangeError(NAME, { argument: 'goal.ceilingKpa', value: goal.ceilingKpa, allowed });
  }
}

function checkPull({ controller }: GateHoldRequest, pull: HoldPull, index: number): void {
  const at = `pulls[${index}]`;
  requireNumber(NAME, `${at}.holdPct`, pull.holdPct, { min: controller.holdMin, max: controller.holdMax });
  requireNumber(NAME, `${at}.settledKpa`, pull.settledKpa, { min: 1, max: 1000 });
  requireNumber(NAME, `${at}.peakKpa`, pull.peakKpa, { min: 0, max: 1000 });
  for (const field of ['riseTimeS', 'onsetRpm'] as const) {
    const value = pull[field];
    if (value !== null && value !== undefined)
      requireNumber(NAME, `${at}.${field}`, value, { min: 0, max: 20_000 });
  }
}
