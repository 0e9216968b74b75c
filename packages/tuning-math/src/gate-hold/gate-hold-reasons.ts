import { amount, sentence, type Amount, type Sentence } from '../sentences/index.js';
import type { GateHoldReason } from './gate-hold-types.js';

const kpa = (value: number): Amount => amount(value, 'kPa');
const pct = (value: number): Amount => amount(value, '%');
const hold = (value: number): Amount => amount(value, '%', 2);

/** The words of every reason, with its numbers in kPa and %. */
export const holdReason = {
  firstPull: (holdPct: number, holdMin: number): GateHoldReason => ({
    code: 'first-pull',
    ...sentence`No pull yet: begin at ${hold(holdPct)} gate hold, within one step of the lowest setting, ${hold(holdMin)}.`,
  }),
  stepLimit: (stepLimit: number, highestPct: number): GateHoldReason => ({
    code: 'step-limit',
    ...sentence`No more than ${amount(stepLimit, 'points', 2)} above the highest gate hold pulled so far, ${hold(highestPct)}.`,
  }),
  ceilingRisk: (chance: number, ceilingKpa: number): GateHoldReason => ({
    code: 'ceiling-risk',
    ...sentence`One setting more and the chance of passing the ceiling of ${kpa(ceilingKpa)} would be ${pct(100 * chance)}.`,
  }),
  aimAtLimit: (overshootPct: number, limitPct: number): GateHoldReason => ({
    code: 'aim-at-limit',
    ...sentence`Overshoot is expected at ${pct(overshootPct)}; the limit is ${pct(limitPct)}.`,
  }),
  backDown: (overshootPct: number, limitPct: number): GateHoldReason => ({
    code: 'back-down',
    ...sentence`The highest gate hold overshot by ${pct(overshootPct)}, past the limit of ${pct(limitPct)}: step back.`,
  }),
  confirm: (holdPct: number): GateHoldReason => ({
    code: 'confirm',
    ...sentence`${hold(holdPct)} is where the limit is kept: one pull there confirms it.`,
  }),
  readingInDoubt: (sawPct: number, expectedPct: number): GateHoldReason => ({
    code: 'reading-in-doubt',
    ...sentence`The last pull overshot by ${pct(sawPct)} where ${pct(expectedPct)} fits the other pulls: repeat it.`,
  }),
  withinLimit: (holdPct: number, chance: number, limitPct: number): GateHoldReason => ({
    code: 'overshoot-within-limit',
    ...sentence`At ${hold(holdPct)} the mean overshoot is within ${pct(limitPct)} with ${pct(Math.min(99.9, 100 * chance))} confidence; more would not be sure.`,
  }),
  highestSetting: (holdPct: number): GateHoldReason => ({
    code: 'highest-setting',
    ...sentence`${hold(holdPct)} is the highest setting, and the overshoot limit is kept there.`,
  }),
  fasterResponse: (gain: Sentence, fromPct: number): GateHoldReason => ({
    code: 'faster-response',
    ...sentence`Against ${hold(fromPct)} gate hold, boost ${gain}.`,
  }),
  peakShifted: (peakKpa: number, targetKpa: number, toleranceKpa: number): GateHoldReason => ({
    code: 'peak-shifted',
    ...sentence`Boost has shifted: the peak without gate-hold overshoot is ${kpa(peakKpa)}, the goal ${kpa(targetKpa)} ± ${kpa(toleranceKpa)}. Find the duty again, then come back.`,
  }),
  movedByHold: (peakKpa: number, targetKpa: number, toleranceKpa: number): GateHoldReason => ({
    code: 'peak-moved-by-hold',
    ...sentence`The gate hold is found, but it has moved the peak to ${kpa(peakKpa)}, outside ${kpa(targetKpa)} ± ${kpa(toleranceKpa)}: find the duty again at this gate hold.`,
  }),
  overshootAtLowest: (overshootPct: number, limitPct: number): GateHoldReason => ({
    code: 'overshoot-at-lowest-hold',
    ...sentence`Even the lowest gate hold overshoots by ${pct(overshootPct)}, past ${pct(limitPct)}: look at actuator, hose length and solenoid before going on.`,
  }),
  noSafeHold: (chance: number, ceilingKpa: number): GateHoldReason => ({
    code: 'no-safe-hold',
    ...sentence`At every gate hold the chance of passing the ceiling of ${kpa(ceilingKpa)} is over the limit (${pct(100 * chance)} at the lowest).`,
  }),
  ceilingPassedAgain: (count: number, ceilingKpa: number): GateHoldReason => ({
    code: 'ceiling-passed-again',
    ...sentence`${String(count)} pulls have passed the ceiling of ${kpa(ceilingKpa)}. Stop: lower the duty and look for the cause.`,
  }),
  foundSound: (soundPulls: number): GateHoldReason => ({
    code: 'found-sound',
    ...sentence`The car was looked over and found sound: no fault is read into the first ${soundPulls === 1 ? 'pull' : `${soundPulls} pulls`} of this search.`,
  }),
};
