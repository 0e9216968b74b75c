import type { DutyReasonCode } from './duty-advice-types.js';
import { sameDuty } from './duty-grid.js';
import type { DutySituation } from './duty-situation.js';
import type { FaultSigns } from './fault-signs.js';
import { chanceMeanBelow, predictPeak } from './predict-peak.js';

/** A peak past the ceiling is a soaring one if the pulls before gave it less than this chance. */
const SOARED_CHANCE = 0.004;
/** A peak below the ceiling must be this unlikely, twice running. */
const SOARED_TWICE_CHANCE = 0.0005;
/** Two pulls running, both this unlikely to be so low, are a lost response. */
const LOST_CHANCE = 0.004;
/** Confidence that the target cannot be reached: before and after the end of the range was pulled. */
const OUT_OF_REACH_BEFORE = 0.998;
const OUT_OF_REACH_AT_END = 0.97;
/** Confidence that even the lowest duty makes too much. */
const FLOOR_OVER = 0.98;
/** Pulls at one duty without an accept after which more of them will not help. */
const MOST_AT_ONE_DUTY = 14;
const MOST_PULLS_WITHOUT_ACCEPT = 45;

/** Why to stop at once; null if there is no reason to. */
export function findStop(situation: DutySituation, signs: FaultSigns): DutyReasonCode | null {
  if (situation.pulls.count === 0) return null;
  return findFault(situation, signs) ?? findLimit(situation);
}

function findFault({ pulls, levels }: DutySituation, signs: FaultSigns): DutyReasonCode | null {
  const over = Array.from(pulls.logs, (log) => log > levels.ceiling);
  const lastOver = over[over.length - 1] === true;
  if (lastOver && pulls.count > 1 && signs.chanceAsHigh < SOARED_CHANCE) return 'peak-soared';
  if (signs.bothAsHigh < SOARED_TWICE_CHANCE) return 'peak-soared';
  if (lastOver && over.filter(Boolean).length >= 3) return 'ceiling-passed-again';
  if (signs.bothAsLow < LOST_CHANCE) return 'response-lost';
  return null;
}

function findLimit({ posterior, request, levels, pulls }: DutySituation): DutyReasonCode | null {
  const { dutyMin, dutyMax } = request.controller;
  const shortAtEnd = chanceMeanBelow(predictPeak(posterior, dutyMax), levels.low);
  const endPulled = pulls.duties.some((duty) => sameDuty(duty, dutyMax));
  if (shortAtEnd > (endPulled ? OUT_OF_REACH_AT_END : OUT_OF_REACH_BEFORE)) return 'target-out-of-reach';
  const overAtStart = 1 - chanceMeanBelow(predictPeak(posterior, dutyMin), levels.high);
  return overAtStart > FLOOR_OVER ? 'floor-over-target' : null;
}

/** Why more pulls will not help, once nothing could be accepted; null if they may. */
export function findStalemate({ request, grid }: DutySituation): DutyReasonCode | null {
  const most = Math.max(
    ...grid.map((duty) => request.pulls.filter((pull) => sameDuty(pull.duty, duty)).length),
  );
  if (most >= MOST_AT_ONE_DUTY) return 'scatter-too-wide';
  return request.pulls.length >= MOST_PULLS_WITHOUT_ACCEPT ? 'no-duty-in-tolerance' : null;
}
