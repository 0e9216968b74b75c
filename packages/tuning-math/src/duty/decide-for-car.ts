import { decideDuty, type DutyDecision } from './decide-duty.js';
import type { DutyAdviceRequest } from './duty-advice-types.js';
import { dutySituation, leaningSituation, type DutySituation } from './duty-situation.js';
import { buildPriorOf, leanOn } from './earlier-cars.js';

/** A decision and the situation that it was made in. */
export interface DecidedDuty {
  readonly situation: DutySituation;
  readonly decision: DutyDecision;
}

/**
 * Decides for a car, with or without earlier cars of its build. What is accepted or stopped rests on this car's own
 * pulls alone, so that a proof is a proof whatever else is on record. Earlier cars only choose where to pull next, at
 * a duty whose chance of passing the ceiling keeps to the limit both with them and without.
 */
export function decideForCar(request: DutyAdviceRequest): DecidedDuty {
  const situation = dutySituation(request);
  const decision = decideDuty(situation);
  const own = { situation, decision };
  if (decision.duty === null || decision.action === 'accept') return own;
  const prior = buildPriorOf(request);
  if (!prior) return own;
  const leaning = leaningSituation(situation, prior.logPrior, leanOn(prior, situation.pulls));
  const leaned = decideDuty(leaning);
  if (leaned.duty === null) return own;
  if (leaned.action !== 'accept') return { situation: leaning, decision: leaned };
  return { situation: leaning, decision: { ...leaned, action: 'repeat', code: 'confirm' } };
}
