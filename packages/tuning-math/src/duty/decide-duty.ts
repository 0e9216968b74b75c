import { aimDuty, type Aim } from './aim-duty.js';
import type { DutyAction, DutyReasonCode } from './duty-advice-types.js';
import { sameDuty, settingAtOrBelow } from './duty-grid.js';
import { chanceInside, chanceOverCeiling, type DutySituation } from './duty-situation.js';
import { faultSigns, type FaultSigns } from './fault-signs.js';
import { predictPeak } from './predict-peak.js';
import { findStalemate, findStop } from './find-stop.js';

/** Confidence that an accept asks for: the mean is inside the tolerance. */
export const ACCEPT_CONFIDENCE = 0.95;
/** The last reading is in doubt below this chance of a reading as low (or as high). */
const DOUBT_CHANCE = 0.003;
/** ... or when it is more likely than this to be a false pull. */
const DOUBT_FALSE = 0.5;
/**
 * Share of the risk limit that a pull may use up. A tuning takes several pulls near the ceiling, so that a pull
 * on the way may use less than one that is likely to end it (chance inside the tolerance from `NEAR_END` on).
 */
const RISK_SHARE_ON_THE_WAY = 0.3;
const RISK_SHARE_AT_THE_END = 0.85;
const NEAR_END = 0.6;

/** What was decided and why, before it is put into words. */
export interface DutyDecision {
  readonly action: DutyAction;
  readonly duty: number | null;
  readonly code: DutyReasonCode;
  readonly aim: Aim | null;
  readonly signs: FaultSigns;
}

/** Stop, accept, repeat or pull, in this order of precedence. */
export function decideDuty(situation: DutySituation): DutyDecision {
  const signs = faultSigns(situation);
  const stop = findStop(situation, signs);
  if (stop) return { action: 'stop', duty: null, code: stop, aim: null, signs };
  const aim = aimDuty(situation);
  const accepted = acceptable(situation, signs);
  if (accepted !== null) return { action: 'accept', duty: accepted, code: 'inside-tolerance', aim, signs };
  const stalemate = findStalemate(situation);
  if (stalemate) return { action: 'stop', duty: null, code: stalemate, aim, signs };
  return nextPull(situation, { aim, signs });
}

/** Most trusted pulled duty whose mean is inside the tolerance with the asked confidence; null if there is none. */
function acceptable(situation: DutySituation, signs: FaultSigns): number | null {
  if (signs.chanceAsLow < DOUBT_CHANCE || signs.chanceAsHigh < DOUBT_CHANCE) return null;
  let best: number | null = null;
  let bestChance = ACCEPT_CONFIDENCE;
  for (const duty of pulledDuties(situation)) {
    const chance = chanceInside(predictPeak(situation.posterior, duty), situation.levels);
    if (chance < bestChance || chanceOverCeiling(situation, duty) > situation.riskLimit) continue;
    best = duty;
    bestChance = chance;
  }
  return best;
}

function pulledDuties({ request, grid }: DutySituation): number[] {
  return grid.filter((duty) => request.pulls.some((pull) => sameDuty(pull.duty, duty)));
}

interface Ground {
  readonly aim: Aim;
  readonly signs: FaultSigns;
}

function nextPull(situation: DutySituation, { aim, signs }: Ground): DutyDecision {
  const wish = wishedDuty(situation, { aim, signs });
  const stepCap = settingAtOrBelow(situation.grid, highestPulled(situation) + situation.stepLimit);
  const capped = Math.min(wish.duty, stepCap);
  const duty = highestSafe(situation, capped);
  const ground = { aim, signs };
  if (duty === null) return { action: 'stop', duty: null, code: 'no-safe-duty', ...ground };
  const pulled = situation.request.pulls.some((pull) => sameDuty(pull.duty, duty));
  const code = codeOf({ wish, stepCap, duty, pulled }, situation);
  return { action: pulled ? 'repeat' : 'pull', duty, code, ...ground };
}

interface Wish {
  readonly duty: number;
  readonly code: DutyReasonCode;
}

/** Where to pull next if neither step nor risk forbade it. */
function wishedDuty(situation: DutySituation, { aim, signs }: Ground): Wish {
  const { pulls, posterior, grid } = situation;
  const last = pulls.count - 1;
  if (last < 0) return { duty: aim.duty, code: 'first-pull' };
  const lastDuty = settingAtOrBelow(grid, pulls.duties[last] ?? 0);
  const doubtful = (posterior.falseChances[last] ?? 0) > DOUBT_FALSE;
  if (aim.duty > lastDuty && (signs.chanceAsLow < DOUBT_CHANCE || doubtful)) {
    return { duty: lastDuty, code: 'low-reading-in-doubt' };
  }
  if (aim.duty >= lastDuty && signs.chanceAsHigh < DOUBT_CHANCE) {
    return { duty: lastDuty, code: 'high-reading-in-doubt' };
  }
  return { duty: aim.duty, code: aim.duty < lastDuty ? 'back-down' : 'aim-at-target' };
}

function highestPulled({ request }: DutySituation): number {
  return request.pulls.reduce((highest, { duty }) => Math.max(highest, duty), request.controller.dutyMin);
}

/** Highest setting up to `cap` whose chance of passing the ceiling is low; the lowest setting if only it is allowed. */
function highestSafe(situation: DutySituation, cap: number): number | null {
  const { grid, riskLimit } = situation;
  for (let index = grid.length - 1; index >= 0; index -= 1) {
    const duty = grid[index] as number;
    if (duty > cap + 1e-9) continue;
    if (chanceOverCeiling(situation, duty) <= riskShareAt(situation, duty) * riskLimit) return duty;
  }
  const lowest = grid[0] as number;
  return chanceOverCeiling(situation, lowest) <= riskLimit ? lowest : null;
}

function riskShareAt({ thin, levels }: DutySituation, duty: number): number {
  const inside = chanceInside(predictPeak(thin, duty), levels);
  const end = Math.min(inside / NEAR_END, 1);
  return RISK_SHARE_ON_THE_WAY + (RISK_SHARE_AT_THE_END - RISK_SHARE_ON_THE_WAY) * end;
}

interface Choice {
  readonly wish: Wish;
  readonly stepCap: number;
  readonly duty: number;
  readonly pulled: boolean;
}

function codeOf({ wish, stepCap, duty, pulled }: Choice, { request }: DutySituation): DutyReasonCode {
  if (request.pulls.length === 0) return 'first-pull';
  if (sameDuty(duty, wish.duty)) {
    if (wish.code === 'aim-at-target' || wish.code === 'back-down') return pulled ? 'confirm' : wish.code;
    return wish.code;
  }
  if (sameDuty(duty, stepCap)) return 'step-limit';
  return pulled ? 'learn-scatter' : 'ceiling-risk';
}
