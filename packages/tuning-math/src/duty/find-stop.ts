import type { DutyReasonCode } from './duty-advice-types.js';
import { sameDuty } from './duty-grid.js';
import type { DutySituation } from './duty-situation.js';
import type { FaultSigns } from './fault-signs.js';
import type { ScaledPulls } from './scaled-pulls.js';
import { chanceMeanBelow, predictPeak } from './predict-peak.js';

/**
 * A peak past the ceiling is a soaring one if it was less dense (per unit of log peak) than peaks that a hose
 * coming off would make: about 1 pull in 100 meets a fault, whose peaks spread over more than one unit.
 */
const SOARED_DENSITY = 0.012;
/** On new ground (a duty higher than any before) the response may just be steep: less dense still. */
const SOARED_NEW_GROUND_DENSITY = 0.001;
/** Far past the ceiling (this many times it) a peak need only be this unlikely. */
const FAR_PAST = Math.log(1.12);
const SOARED_FAR_CHANCE = 0.002;
/** Without a new duty, two peaks running must each be this unlikely. */
const SOARED_TWICE_CHANCE = 0.0005;
/**
 * Two pulls running, both this unlikely to be so low, are a lost response. False pulls come in twos at times: then the
 * car is looked over for nothing, which costs minutes.
 */
const LOST_TWICE_CHANCE = 0.002;
/** Three pulls running need not be as unlikely: in general, and where each is below an earlier peak. */
const LOST_CHANCE = 0.005;
const LOST_BELOW_EARLIER_CHANCE = 0.05;
/** A reading is below an earlier one, at no more duty, if it is lower by this, log. */
const BELOW_EARLIER = 0.03;
/** ... and this much below it whatever else is expected. */
const FAR_BELOW_EARLIER = 0.07;
/** Confidence that the target cannot be reached: before and after the end of the range was pulled. */
const OUT_OF_REACH_BEFORE = 0.975;
const OUT_OF_REACH_AT_END = 0.93;
/** Confidence that even the lowest duty makes too much. */
const FLOOR_OVER = 0.98;
/** Pulls at one duty without an accept after which more of them will not help. */
const MOST_AT_ONE_DUTY = 30;
const MOST_PULLS_WITHOUT_ACCEPT = 45;

/** Why to stop at once; null if there is no reason to. */
export function findStop(situation: DutySituation, signs: FaultSigns): DutyReasonCode | null {
  if (situation.pulls.count === 0) return null;
  return findFault(situation, signs) ?? findLimit(situation);
}

function findFault(situation: DutySituation, signs: FaultSigns): DutyReasonCode | null {
  const { pulls, levels } = situation;
  const since = pullsSinceSound(situation);
  if (since < 1) return null;
  const last = (pulls.logs[pulls.count - 1] as number) - levels.ceiling;
  if (pulls.count > 1 && hasSoared(last, signs, isNewGround(pulls, 1))) return 'peak-soared';
  if (since >= 2 && signs.bothAsHigh < SOARED_TWICE_CHANCE && !isNewGround(pulls, 2)) return 'peak-soared';
  if (last > 0 && pulls.logs.filter((log) => log > levels.ceiling).length >= 3) return 'ceiling-passed-again';
  return findLost(situation, signs);
}

/** Pulls since somebody looked the car over and found it sound; a fault may show in these only. */
function pullsSinceSound({ request }: DutySituation): number {
  return request.pulls.length - (request.soundPulls ?? 0);
}

function findLost(situation: DutySituation, signs: FaultSigns): DutyReasonCode | null {
  const since = pullsSinceSound(situation);
  // Far below stays a stop also after further pulls, which would else teach the posterior that low is usual.
  if (since >= 3 && areBelowEarlier(situation.pulls, FAR_BELOW_EARLIER, 3)) return 'response-lost';
  const fell = since >= 3 && areBelowEarlier(situation.pulls, BELOW_EARLIER, 3);
  if (!areUnlikelyLow(signs, since, fell)) return null;
  // Flat all the way up the range, and never lower than before: nothing came off, there was never more to come.
  return !fell && endIsPulled(situation) ? findLimit(situation) : 'response-lost';
}

function areUnlikelyLow({ bothAsLow, threeAsLow }: FaultSigns, since: number, fell: boolean): boolean {
  if (since >= 2 && bothAsLow < LOST_TWICE_CHANCE) return true;
  return since >= 3 && threeAsLow < (fell ? LOST_BELOW_EARLIER_CHANCE : LOST_CHANCE);
}

function hasSoared(pastCeiling: number, { chanceAsHigh, density }: FaultSigns, newGround: boolean): boolean {
  if (pastCeiling <= 0 || chanceAsHigh > 0.5) return false;
  if (density < (newGround ? SOARED_NEW_GROUND_DENSITY : SOARED_DENSITY)) return true;
  return pastCeiling > FAR_PAST && chanceAsHigh < SOARED_FAR_CHANCE;
}

/** Whether one of the last `recent` pulls was at a higher duty than any before them. */
function isNewGround({ duties, count }: ScaledPulls, recent: number): boolean {
  const before = duties.subarray(0, count - recent);
  return duties.subarray(count - recent).some((duty) => before.every((earlier) => earlier < duty));
}

/** A single pull is no ground to fall from: its reading may be the odd one. */
const LEAST_GROUND = 2;

/** Whether each of the last pulls made less, by so much in log, than some pull before them at no more duty. */
function areBelowEarlier({ duties, logs, count }: ScaledPulls, byLog: number, recent: number): boolean {
  if (count < recent + LEAST_GROUND) return false;
  const before = logs.subarray(0, count - recent);
  return Array.from({ length: recent }, (_, index) => count - recent + index).every((pull) =>
    before.some(
      (log, j) => (duties[j] as number) <= (duties[pull] as number) && (logs[pull] as number) < log - byLog,
    ),
  );
}

function endIsPulled({ pulls, request }: DutySituation): boolean {
  return pulls.duties.some((duty) => sameDuty(duty, request.controller.dutyMax));
}

function findLimit(situation: DutySituation): DutyReasonCode | null {
  const { posterior, request, levels } = situation;
  const { dutyMin, dutyMax } = request.controller;
  const shortAtEnd = chanceMeanBelow(predictPeak(posterior, dutyMax), levels.low);
  if (shortAtEnd > (endIsPulled(situation) ? OUT_OF_REACH_AT_END : OUT_OF_REACH_BEFORE))
    return 'target-out-of-reach';
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
