import { formatNumber } from '../units/format-number.js';
import type { GateHoldReason } from './gate-hold-types.js';

const kpa = (value: number): string => `${formatNumber(value, 0)} kPa`;
const pct = (value: number): string => `${formatNumber(value, 1)} %`;
const hold = (value: number): string => `${Number(value.toFixed(2))} %`;

/** The words of every reason, with its numbers in kPa and %. */
export const holdReason = {
  firstPull: (holdPct: number, holdMin: number): GateHoldReason => ({
    code: 'first-pull',
    text: `No pull yet: begin at ${hold(holdPct)} gate hold, within one step of the lowest setting, ${hold(holdMin)}.`,
  }),
  stepLimit: (stepLimit: number, highestPct: number): GateHoldReason => ({
    code: 'step-limit',
    text: `No more than ${Number(stepLimit.toFixed(2))} points above the highest gate hold pulled so far, ${hold(highestPct)}.`,
  }),
  ceilingRisk: (chance: number, ceilingKpa: number): GateHoldReason => ({
    code: 'ceiling-risk',
    text: `One setting more and the chance of passing the ceiling of ${kpa(ceilingKpa)} would be ${pct(100 * chance)}.`,
  }),
  aimAtLimit: (overshootPct: number, limitPct: number): GateHoldReason => ({
    code: 'aim-at-limit',
    text: `Overshoot is expected at ${pct(overshootPct)}; the limit is ${pct(limitPct)}.`,
  }),
  backDown: (overshootPct: number, limitPct: number): GateHoldReason => ({
    code: 'back-down',
    text: `The highest gate hold overshot by ${pct(overshootPct)}, past the limit of ${pct(limitPct)}: step back.`,
  }),
  confirm: (holdPct: number): GateHoldReason => ({
    code: 'confirm',
    text: `${hold(holdPct)} is where the limit is kept: one pull there confirms it.`,
  }),
  readingInDoubt: (sawPct: number, expectedPct: number): GateHoldReason => ({
    code: 'reading-in-doubt',
    text: `The last pull overshot by ${pct(sawPct)} where ${pct(expectedPct)} fits the other pulls: repeat it.`,
  }),
  withinLimit: (holdPct: number, chance: number, limitPct: number): GateHoldReason => ({
    code: 'overshoot-within-limit',
    text: `At ${hold(holdPct)} the mean overshoot is within ${pct(limitPct)} with ${pct(Math.min(99.9, 100 * chance))} confidence; more would not be sure.`,
  }),
  highestSetting: (holdPct: number): GateHoldReason => ({
    code: 'highest-setting',
    text: `${hold(holdPct)} is the highest setting, and the overshoot limit is kept there.`,
  }),
  fasterResponse: (gain: string, fromPct: number): GateHoldReason => ({
    code: 'faster-response',
    text: `Against ${hold(fromPct)} gate hold, boost ${gain}.`,
  }),
  peakShifted: (peakKpa: number, targetKpa: number, toleranceKpa: number): GateHoldReason => ({
    code: 'peak-shifted',
    text: `Boost has shifted: the peak without gate-hold overshoot is ${kpa(peakKpa)}, the goal ${kpa(targetKpa)} ± ${formatNumber(toleranceKpa, 0)}. Find the duty again, then come back.`,
  }),
  movedByHold: (peakKpa: number, targetKpa: number, toleranceKpa: number): GateHoldReason => ({
    code: 'peak-moved-by-hold',
    text: `The gate hold is found, but it has moved the peak to ${kpa(peakKpa)}, outside ${kpa(targetKpa)} ± ${formatNumber(toleranceKpa, 0)}: find the duty again at this gate hold.`,
  }),
  overshootAtLowest: (overshootPct: number, limitPct: number): GateHoldReason => ({
    code: 'overshoot-at-lowest-hold',
    text: `Even the lowest gate hold overshoots by ${pct(overshootPct)}, past ${pct(limitPct)}: look at actuator, hose length and solenoid before going on.`,
  }),
  noSafeHold: (chance: number, ceilingKpa: number): GateHoldReason => ({
    code: 'no-safe-hold',
    text: `At every gate hold the chance of passing the ceiling of ${kpa(ceilingKpa)} is over the limit (${pct(100 * chance)} at the lowest).`,
  }),
  ceilingPassedAgain: (count: number, ceilingKpa: number): GateHoldReason => ({
    code: 'ceiling-passed-again',
    text: `${count} pulls have passed the ceiling of ${kpa(ceilingKpa)}. Stop: lower the duty and look for the cause.`,
  }),
};
