import type { DutyAdvice } from '@pullbook/contracts';
import { adviseDuty, type DutyAdviceRequest } from '@pullbook/tuning-math';

/** An advice as the API tells it, with the positions of the pulls that prove an accept. */
export interface TracedDutyAdvice {
  readonly advice: DutyAdvice;
  readonly provedBy: readonly number[];
}

/** Enough for every preset of a full yard several times over; an answer is a few kilobytes. */
const MOST_KEPT = 1200;

const kept = new Map<string, TracedDutyAdvice>();

/**
 * The duty advice for a request, computed once for each distinct request: boards and lists ask the same again and
 * again, and the math gives the same answer to the last bit.
 *
 * @throws ArgumentError for a request that no advice may rest on
 */
export function adviseOnce(request: DutyAdviceRequest): TracedDutyAdvice {
  const key = JSON.stringify(request);
  const known = kept.get(key);
  if (known !== undefined) return known;
  const { action, duty, prediction, reasons, curve, provedBy } = adviseDuty(request);
  const advice: DutyAdvice = {
    action,
    duty,
    prediction: prediction === null ? null : { ...prediction },
    reasons: reasons.map(({ code, text, pieces }) => ({ code, text, pieces: [...pieces] })),
    curve: curve.map((point) => ({ ...point })),
  };
  const traced = { advice, provedBy };
  const oldest = kept.keys().next();
  if (kept.size >= MOST_KEPT && oldest.done !== true) kept.delete(oldest.value);
  kept.set(key, traced);
  return traced;
}
