import { checkGateHoldRequest } from './check-gate-hold-request.js';
import { findHoldStop } from './find-hold-stop.js';
import { holdGain } from './hold-gain.js';
import { holdReason } from './gate-hold-reasons.js';
import type { GateHoldAdvice, GateHoldReason, GateHoldRequest } from './gate-hold-types.js';
import { readHoldSituation, type HoldSituation } from './hold-situation.js';
import {
  meanOvershoot,
  overshootScatter,
  probabilityMeanOver,
  probabilityPeakOver,
  pullOvershoot,
  type OvershootCurve,
} from './overshoot-posterior.js';
import { predictHold } from './predict-hold.js';

/** Accepted width, in points of hold, between the sure setting and the highest that still might do. */
const FIRST_WIDTH = 4;
/** With every pull the search is content with a little more: it shall end. */
const WIDTH_PER_PULL = 0.5;
/** A last pull that lies this many scatters off the curve through all pulls is repeated. */
const DOUBTFUL_SCATTERS = 4;

/**
 * The next pull in the search for the highest gate hold whose overshoot keeps its limit and whose peak keeps
 * the ceiling; or: repeat, accept, stop, or go back to duty because the peak has shifted. Use it once the
 * duty is found and a readiness check is passed; a qualified person decides.
 *
 * @param request controller's range, goal with ceiling and overshoot limit, pulls so far at unchanged duty
 * @returns action, hold on the controller's grid, prediction, reasons with their numbers
 * @throws NotFiniteError, OutOfRangeError naming the field
 * Cost: some 6000 curves times the pulls, some ten milliseconds.
 * Source: Bayes' rule over curves that never fall (see `overshootPosterior`); step and ceiling rules are
 * common practice, no source. It never advises a hold past the step limit, past the controller's range, or
 * with a predicted chance of passing the ceiling over the risk limit.
 */
export function adviseGateHold(request: GateHoldRequest): GateHoldAdvice {
  const situation = readHoldSituation(checkGateHoldRequest(request));
  return (
    findHoldStop(situation) ??
    firstPull(situation) ??
    doubt(situation) ??
    found(situation) ??
    nextPull(situation)
  );
}

function firstPull(situation: HoldSituation): GateHoldAdvice | null {
  if (situation.highestPulled !== null) return null;
  const holdPct = Math.min(situation.reach, situation.safe ?? situation.reach);
  return advise(situation, 'pull', holdPct, [
    holdReason.firstPull(holdPct, situation.request.controller.holdMin),
  ]);
}

function doubt(situation: HoldSituation): GateHoldAdvice | null {
  const { pulls } = situation.request;
  const last = pulls.at(-1);
  if (last === undefined || pulls.length < 2 || pulls.filter((p) => p.holdPct === last.holdPct).length > 1)
    return null;
  const mean = meanOfBelief(situation, (curve) => meanOvershoot(curve, last.holdPct));
  const scatter = meanOfBelief(situation, (curve) => overshootScatter(curve, last.holdPct));
  const saw = pullOvershoot(last);
  const isSafe = situation.safe !== null && last.holdPct <= situation.safe;
  if (!isSafe || Math.abs(saw - mean) <= DOUBTFUL_SCATTERS * scatter) return null;
  return advise(situation, 'repeat', last.holdPct, [holdReason.readingInDoubt(saw, mean)]);
}

function found(situation: HoldSituation): GateHoldAdvice | null {
  const { request, sure, safe, possible } = situation;
  if (sure === null || safe === null) return null;
  const holdPct = Math.min(sure, safe);
  const provedBy = request.pulls.flatMap((pull, index) =>
    Math.abs(pull.holdPct - holdPct) < 1e-6 ? [index] : [],
  );
  const width = FIRST_WIDTH + WIDTH_PER_PULL * request.pulls.length;
  const isNarrow = Math.min(possible ?? holdPct, safe) - holdPct <= width;
  if (provedBy.length === 0 || !isNarrow) return null;
  const chance = 1 - probabilityMeanOver(situation.posterior, holdPct, request.goal.overshootLimitPct);
  const isHighest = holdPct === situation.grid.at(-1);
  const reasons = [
    isHighest
      ? holdReason.highestSetting(holdPct)
      : holdReason.withinLimit(holdPct, chance, request.goal.overshootLimitPct),
  ];
  return settle(situation, holdPct, provedBy, reasons);
}

/** The found hold: accepted, or sent back to duty where it has moved the peak out of the tolerance. */
function settle(
  situation: HoldSituation,
  holdPct: number,
  provedBy: readonly number[],
  reasons: GateHoldReason[],
): GateHoldAdvice {
  const { goal, pulls } = situation.request;
  const { gain, reason } = holdGain(pulls, holdPct);
  if (reason !== null) reasons.push(reason);
  const prediction = predictHold(situation.posterior, holdPct, goal);
  const isInside = Math.abs(prediction.medianKpa - goal.targetKpa) <= goal.toleranceKpa;
  if (!isInside)
    reasons.unshift(holdReason.movedByHold(prediction.medianKpa, goal.targetKpa, goal.toleranceKpa));
  return { action: isInside ? 'accept' : 'back-to-duty', holdPct, prediction, reasons, provedBy, gain };
}

function nextPull(situation: HoldSituation): GateHoldAdvice {
  const { request, reach, sure, likely } = situation;
  const lowest = request.controller.holdMin;
  const safe = situation.safe ?? lowest;
  const isNew = (holdPct: number): boolean =>
    request.pulls.every((pull) => Math.abs(pull.holdPct - holdPct) > 1e-6);
  const certain = Math.min(sure ?? lowest, reach, safe);
  const wished = Math.min(likely ?? lowest, reach, safe);
  const isConfirming = isNew(certain) && wished - certain <= FIRST_WIDTH;
  const holdPct = isConfirming ? certain : wished;
  return advise(situation, 'pull', holdPct, pullReasons(situation, holdPct, isConfirming));
}

function pullReasons(situation: HoldSituation, holdPct: number, isConfirming: boolean): GateHoldReason[] {
  const { request, reach, grid } = situation;
  const isAtReach = holdPct === reach && reach < (grid.at(-1) ?? reach);
  const reasons = [boundReason(situation, holdPct, isAtReach)];
  if (isConfirming && !isAtReach) reasons.push(holdReason.confirm(holdPct));
  const overshoot = meanOfBelief(situation, (curve) => meanOvershoot(curve, holdPct));
  reasons.push(holdReason.aimAtLimit(overshoot, request.goal.overshootLimitPct));
  return reasons.filter((reason) => reason !== null);
}

/** What keeps the hold from being higher: the last overshoot, the step limit or the ceiling. */
function boundReason(situation: HoldSituation, holdPct: number, isAtReach: boolean): GateHoldReason | null {
  const { request, posterior, grid, safe, highestPulled } = situation;
  const { overshootLimitPct, ceilingKpa } = request.goal;
  const highest = request.pulls.reduce((best, pull) => (pull.holdPct > best.holdPct ? pull : best));
  if (holdPct < highest.holdPct && pullOvershoot(highest) > overshootLimitPct) {
    return holdReason.backDown(pullOvershoot(highest), overshootLimitPct);
  }
  if (isAtReach) return holdReason.stepLimit(request.stepLimit, highestPulled ?? request.controller.holdMin);
  const next = grid[grid.indexOf(holdPct) + 1];
  if (holdPct !== safe || next === undefined) return null;
  return holdReason.ceilingRisk(probabilityPeakOver(posterior, next, ceilingKpa), ceilingKpa);
}

function meanOfBelief({ posterior }: HoldSituation, figure: (curve: OvershootCurve) => number): number {
  return posterior.curves.reduce((sum, curve) => sum + curve.weight * figure(curve), 0);
}

function advise(
  situation: HoldSituation,
  action: 'pull' | 'repeat',
  holdPct: number,
  reasons: GateHoldReason[],
): GateHoldAdvice {
  const prediction = predictHold(situation.posterior, holdPct, situation.request.goal);
  return { action, holdPct, prediction, reasons, provedBy: [], gain: null };
}
