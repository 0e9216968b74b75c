import { checkGateHoldRequest } from './check-gate-hold-request.js';
import { findHoldStop } from './find-hold-stop.js';
import { holdGain } from './hold-gain.js';
import { holdReason } from './gate-hold-reasons.js';
import type { GateHoldAdvice, GateHoldReason, GateHoldRequest, HoldPull } from './gate-hold-types.js';
import { readHoldSituation, type HoldSituation } from './hold-situation.js';
import { holdChances } from './hold-chances.js';
import { mixtureOver, peakMixture } from './peak-mixture.js';
import { overshootPosterior } from './overshoot-posterior.js';
import { predictHold } from './predict-hold.js';
import { pullOvershoot } from './pull-overshoot.js';

/** Where the likely best is no more points above what is surely in bounds, the sure one is pulled, to be found. */
const CONFIRM_WIDTH = 3;
/** A setting is found only if it, or one so near, has been pulled; never above the highest pulled. */
const NEAR_PCT = 3;
/** Accepted width, in points of hold, from the found setting to where the best one hardly lies higher. */
const FIRST_WIDTH = 4.5;
/** With every pull the search is content with more, and with more again the longer it lasts: it shall end. */
const WIDTH_PER_PULL = 0.1;
const WIDTH_PER_PULL_SQUARED = 0.015;
/** A last pull that so seldom comes out as high or as low is repeated. */
const DOUBTFUL_SHARE = 5e-4;

/**
 * The next pull in the search for the highest gate hold whose overshoot keeps its limit and whose peak keeps
 * the ceiling; or: repeat, accept, stop, or go back to duty because the peak has shifted. Use it once the
 * duty is found and a readiness check is passed; a qualified person decides.
 *
 * @param request controller's range, goal with ceiling and overshoot limit, pulls so far at unchanged duty
 * @returns action, hold on the controller's grid, prediction, reasons with their numbers
 * @throws NotFiniteError, OutOfRangeError naming the field
 * Cost: some 7800 curves times the pulls; timed by `npm run bench:settings`.
 * Source: Bayes' rule over curves that never fall (see `overshootPosterior`); step and ceiling rules are
 * common practice, no source. What it finds has still to be proven by pulls at that setting (`provePreset`). It never
 * advises a hold past the step limit, past the controller's range, or with a predicted chance of passing the ceiling
 * over the risk limit.
 */
export function adviseGateHold(request: GateHoldRequest): GateHoldAdvice {
  const situation = readHoldSituation(checkGateHoldRequest(request));
  const advice =
    findHoldStop(situation) ??
    firstPull(situation) ??
    doubt(situation) ??
    found(situation) ??
    nextPull(situation);
  return withSoundCar(advice, situation.request.soundPulls);
}

/** Whoever drives on after a look at the car reads that the advice counts on it. */
function withSoundCar(advice: GateHoldAdvice, soundPulls: number): GateHoldAdvice {
  if (soundPulls === 0 || advice.action === 'stop') return advice;
  return { ...advice, reasons: [...advice.reasons, holdReason.foundSound(soundPulls)] };
}

function firstPull(situation: HoldSituation): GateHoldAdvice | null {
  if (situation.highestPulled !== null) return null;
  const { reach, safe, allowed, request } = situation;
  const holdPct = Math.min(reach, safe ?? allowed ?? request.controller.holdMin);
  return advise(situation, 'pull', holdPct, [holdReason.firstPull(holdPct, request.controller.holdMin)]);
}

/**
 * A last pull that the pulls before it did not let expect: nothing is concluded from it alone. One whose peak came near
 * the ceiling is not asked for again, however seldom it is thought to be.
 */
function doubt(situation: HoldSituation): GateHoldAdvice | null {
  const { pulls, goal } = situation.request;
  const last = pulls.at(-1);
  if (last === undefined || pulls.length < 3 || pulls.filter((p) => p.holdPct === last.holdPct).length > 1)
    return null;
  const before = overshootPosterior(pulls.slice(0, -1), goal.targetKpa);
  const over = mixtureOver(peakMixture(before, last.holdPct), last.peakKpa);
  const isSafe = situation.safe !== null && last.holdPct <= Math.min(situation.safe, situation.reach);
  if (!isSafe || (over > DOUBTFUL_SHARE && over < 1 - DOUBTFUL_SHARE)) return null;
  const mean = holdChances(before, last.holdPct, goal, situation.request.riskLimit).overshootPct;
  return advise(situation, 'repeat', last.holdPct, [holdReason.readingInDoubt(pullOvershoot(last), mean)]);
}

function found(situation: HoldSituation): GateHoldAdvice | null {
  const { request, reach, sure, allowed, possible } = situation;
  if (allowed === null) return null;
  const holdPct = Math.min(sure, reach, allowed, situation.highestPulled ?? request.controller.holdMin);
  const provedBy = nearestPulls(request.pulls, holdPct);
  if (provedBy.length === 0) return null;
  const width = acceptedWidth(request.pulls.length);
  if (Math.min(possible, situation.grid.at(-1) ?? possible) - holdPct > width) return null;
  const chance = 1 - situation.chancesAt(holdPct).overLimit;
  const isHighest = holdPct === situation.grid.at(-1);
  const reasons = [
    isHighest
      ? holdReason.highestSetting(holdPct)
      : holdReason.withinLimit(holdPct, chance, request.goal.overshootLimitPct),
  ];
  return settle(situation, holdPct, provedBy, reasons);
}

const acceptedWidth = (pulls: number): number =>
  FIRST_WIDTH + WIDTH_PER_PULL * pulls + WIDTH_PER_PULL_SQUARED * pulls * pulls;

/** Pulls nearest to a hold, if near enough to stand for it: their positions. */
function nearestPulls(pulls: readonly HoldPull[], holdPct: number): number[] {
  const distances = pulls.map((pull) => Math.abs(pull.holdPct - holdPct));
  const nearest = Math.min(...distances);
  if (nearest > NEAR_PCT) return [];
  return distances.flatMap((distance, index) => (distance <= nearest + 1e-6 ? [index] : []));
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
  const prediction = predictHold(situation.posterior, holdPct, situation.chancesAt(holdPct));
  const isInside = Math.abs(prediction.medianKpa - goal.targetKpa) <= goal.toleranceKpa;
  if (!isInside)
    reasons.unshift(holdReason.movedByHold(prediction.medianKpa, goal.targetKpa, goal.toleranceKpa));
  return { action: isInside ? 'accept' : 'back-to-duty', holdPct, prediction, reasons, provedBy, gain };
}

function nextPull(situation: HoldSituation): GateHoldAdvice {
  const { request, reach, sure, likely } = situation;
  const safe = situation.safe ?? request.controller.holdMin;
  const isNew = (holdPct: number): boolean =>
    request.pulls.every((pull) => Math.abs(pull.holdPct - holdPct) > 1e-6);
  const certain = Math.min(sure, reach, safe);
  const wished = Math.min(likely, reach, safe);
  const isConfirming = isNew(certain) && wished - certain <= CONFIRM_WIDTH;
  const holdPct = isConfirming ? certain : wished;
  return advise(situation, 'pull', holdPct, pullReasons(situation, holdPct, isConfirming));
}

function pullReasons(situation: HoldSituation, holdPct: number, isConfirming: boolean): GateHoldReason[] {
  const { request, reach, grid } = situation;
  const isAtReach = holdPct === reach && reach < (grid.at(-1) ?? reach);
  const reasons = [boundReason(situation, holdPct, isAtReach)];
  if (isConfirming && !isAtReach) reasons.push(holdReason.confirm(holdPct));
  const overshoot = situation.chancesAt(holdPct).overshootPct;
  reasons.push(holdReason.aimAtLimit(overshoot, request.goal.overshootLimitPct));
  return reasons.filter((reason) => reason !== null);
}

/** What keeps the hold from being higher: the last overshoot, the step limit or the ceiling. */
function boundReason(situation: HoldSituation, holdPct: number, isAtReach: boolean): GateHoldReason | null {
  const { request, grid, safe, highestPulled } = situation;
  const { overshootLimitPct, ceilingKpa } = request.goal;
  const highest = request.pulls.reduce((best, pull) => (pull.holdPct > best.holdPct ? pull : best));
  if (holdPct < highest.holdPct && pullOvershoot(highest) > overshootLimitPct) {
    return holdReason.backDown(pullOvershoot(highest), overshootLimitPct);
  }
  if (isAtReach) return holdReason.stepLimit(request.stepLimit, highestPulled ?? request.controller.holdMin);
  const next = grid[grid.indexOf(holdPct) + 1];
  if (holdPct !== safe || next === undefined) return null;
  return holdReason.ceilingRisk(situation.chancesAt(next).overCeiling, ceilingKpa);
}

function advise(
  situation: HoldSituation,
  action: 'pull' | 'repeat',
  holdPct: number,
  reasons: GateHoldReason[],
): GateHoldAdvice {
  const prediction = predictHold(situation.posterior, holdPct, situation.chancesAt(holdPct));
  return { action, holdPct, prediction, reasons, provedBy: [], gain: null };
}
