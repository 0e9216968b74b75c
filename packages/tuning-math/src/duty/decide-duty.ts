import { aimDuty, type Aim } from './aim-duty.js';
import { chooseDuty } from './choose-duty.js';
import { ACCEPT_CONFIDENCE, RISK_SHARE } from './decision-settings.js';
import type { DutyAction, DutyReasonCode } from './duty-advice-types.js';
import { sameDuty, settingAtOrBelow } from './duty-grid.js';
import { chanceInside, chanceOverCeiling, type DutySituation } from './duty-situation.js';
import { faultSigns, type FaultSigns } from './fault-signs.js';
import { predictPeak } from './predict-peak.js';
import type { ScaledPulls } from './scaled-pulls.js';
import { findStalemate, findStop } from './find-stop.js';
import { highestWithinRisk } from './highest-within-risk.js';

/** The last reading is in doubt below this chance of a reading as low (or as high). */
const DOUBT_CHANCE = 0.003;
/** ... or when it is more likely than this to be a false pull. */
const DOUBT_FALSE = 0.5;
/** What was decided and why, before it is put into words. */
export interface DutyDecision {
  readonly action: DutyAction;
  readonly duty: number | null;
  readonly code: DutyReasonCode;
}

/** Stop, accept, repeat or pull, in this order of precedence. */
export function decideDuty(situation: DutySituation): DutyDecision {
  const signs = faultSigns(situation);
  const stop = findStop(situation, signs);
  if (stop) return { action: 'stop', duty: null, code: stop };
  const accepted = acceptable(situation, signs);
  if (accepted !== null) return { action: 'accept', duty: accepted, code: 'inside-tolerance' };
  const stalemate = findStalemate(situation);
  if (stalemate) return { action: 'stop', duty: null, code: stalemate };
  return nextPull(situation, { aim: aimDuty(situation), signs });
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
  const { grid } = situation;
  const stepCap = settingAtOrBelow(grid, highestPulled(situation) + situation.stepLimit);
  const position = isInDoubt(wish)
    ? highestSafe(situation, grid.indexOf(Math.min(wish.duty, stepCap)))
    : chooseDuty(situation, grid.indexOf(stepCap));
  if (position === null) return mayMeasureBase(situation) ? measureBase(situation) : NO_SAFE_DUTY;
  const duty = grid[position] as number;
  const pulled = situation.request.pulls.some((pull) => sameDuty(pull.duty, duty));
  const code = codeOf({ wish, stepCap, duty, pulled }, situation);
  return { action: pulled ? 'repeat' : 'pull', duty, code };
}

/** The first pull may be at the lowest setting unless that is this likely to be too much. */
const MOST_RISK_OF_BASE = 0.1;

/** Before any pull the lowest setting is how to know the car: nothing less can be asked for. */
function mayMeasureBase(situation: DutySituation): boolean {
  const { pulls, grid } = situation;
  return pulls.count === 0 && chanceOverCeiling(situation, grid[0] as number) <= MOST_RISK_OF_BASE;
}

function measureBase({ grid }: DutySituation): DutyDecision {
  return { action: 'pull', duty: grid[0] as number, code: 'measure-base' };
}

const NO_SAFE_DUTY: DutyDecision = { action: 'stop', duty: null, code: 'no-safe-duty' };

function isInDoubt({ code }: Wish): boolean {
  return code === 'low-reading-in-doubt' || code === 'high-reading-in-doubt';
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

/** Position of the highest setting up to `top` that keeps to the risk limit; null if none does. */
function highestSafe(situation: DutySituation, top: number): number | null {
  const highest = highestWithinRisk(situation, top, RISK_SHARE * situation.riskLimit);
  const chance = chanceOverCeiling(situation, situation.grid[highest] as number);
  return chance <= situation.riskLimit ? highest : null;
}

interface Choice {
  readonly wish: Wish;
  readonly stepCap: number;
  readonly duty: number;
  readonly pulled: boolean;
}

function codeOf(
  { wish, stepCap, duty, pulled }: Choice,
  { request, grid, pulls }: DutySituation,
): DutyReasonCode {
  if (request.pulls.length === 0) return 'first-pull';
  if (isInDoubt(wish) && sameDuty(duty, wish.duty)) return wish.code;
  const isAim = sameDuty(duty, wish.duty) || duty > wish.duty;
  if (pulled) return isAim ? 'confirm' : 'learn-scatter';
  return newDutyCode({
    isAim,
    isBelowLast: duty < lastSetting(grid, pulls),
    isStep: sameDuty(duty, stepCap),
  });
}

interface NewDuty {
  readonly isAim: boolean;
  readonly isBelowLast: boolean;
  readonly isStep: boolean;
}

function newDutyCode({ isAim, isBelowLast, isStep }: NewDuty): DutyReasonCode {
  if (isBelowLast) return 'back-down';
  if (isAim) return 'aim-at-target';
  return isStep ? 'step-limit' : 'ceiling-risk';
}

function lastSetting(grid: readonly number[], { duties, count }: ScaledPulls): number {
  return settingAtOrBelow(grid, duties[count - 1] ?? 0);
}
