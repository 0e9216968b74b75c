import { normalCdf } from '../numerics/normal-cdf.js';
import { holdReason } from './gate-hold-reasons.js';
import type { GateHoldAction, GateHoldAdvice, GateHoldReason, HoldPull } from './gate-hold-types.js';
import type { HoldSituation } from './hold-situation.js';

/** So sure one must be before a tuner is stopped or sent back. */
const SURE = 0.9;

/** Whether the search must stop or go back to duty before another pull, and why; null where it may go on. */
export function findHoldStop(situation: HoldSituation): GateHoldAdvice | null {
  const { goal, pulls, controller } = situation.request;
  const passed = timesPassedAgain(situation);
  if (passed !== null) return end('stop', holdReason.ceilingPassedAgain(passed, goal.ceilingKpa));
  const peakKpa = peakWithoutHold(situation);
  if (pulls.length > 0 && chanceOutside(situation, peakKpa) >= SURE) {
    return end('back-to-duty', holdReason.peakShifted(peakKpa, goal.targetKpa, goal.toleranceKpa));
  }
  const overAtLowest = situation.chancesAt(controller.holdMin).overLimit;
  if (pulls.length >= 2 && overAtLowest >= SURE) {
    const overshoot = situation.chancesAt(controller.holdMin).overshootPct;
    return end('stop', holdReason.overshootAtLowest(overshoot, goal.overshootLimitPct));
  }
  if (pulls.length > 0 && situation.allowed === null) {
    const chance = situation.chancesAt(controller.holdMin).overCeiling;
    return end('stop', holdReason.noSafeHold(chance, goal.ceilingKpa));
  }
  return null;
}

/**
 * How many pulls passed the ceiling, where it was passed again; else null. Once the car was found sound, only a further
 * pass is one again: those before it count with it, but no longer by themselves.
 */
function timesPassedAgain({ request }: HoldSituation): number | null {
  const { goal, pulls, soundPulls } = request;
  const hasPassed = (pull: HoldPull): boolean => pull.peakKpa > goal.ceilingKpa;
  const passed = pulls.filter(hasPassed).length;
  return passed >= 2 && pulls.slice(soundPulls).some(hasPassed) ? passed : null;
}

/** Settled boost with the overshoot that is there without any hold: what duty alone is answerable for. */
function peakWithoutHold({ posterior }: HoldSituation): number {
  const basePct = posterior.weight.reduce(
    (sum, weight, curve) => sum + weight * (posterior.basePct[curve] ?? 0),
    0,
  );
  return posterior.settledKpa * (1 + basePct / 100);
}

function chanceOutside({ request, posterior }: HoldSituation, peakKpa: number): number {
  const { targetKpa, toleranceKpa } = request.goal;
  const error = posterior.settledErrorKpa;
  const below = normalCdf((targetKpa - toleranceKpa - peakKpa) / error);
  const above = normalCdf((peakKpa - targetKpa - toleranceKpa) / error);
  return below + above;
}

function end(action: GateHoldAction, reason: GateHoldReason): GateHoldAdvice {
  return { action, holdPct: null, prediction: null, reasons: [reason], provedBy: [], gain: null };
}
