import { requireNumber } from '../require-number.js';
import { CONDITIONS, type ConditionFacts } from './condition-facts.js';
import type { Condition, ConditionEffect, ConditionsModel, PullConditions } from './conditions-types.js';

/** A condition that differs between two lots of pulls and that nothing was corrected for. */
export interface UncorrectedChange {
  readonly condition: Condition;
  /** Later mean less earlier mean: gears, % gradient, K or kPa. */
  readonly change: number;
  /** How far it may move the peak either way, one standard deviation, %. */
  readonly possiblePct: number;
}

/** How far unlike conditions alone may move a peak. */
export interface ConditionShift {
  readonly uncorrected: readonly UncorrectedChange[];
  /** Conditions that one of the two lots does not know: nobody can say whether they changed. */
  readonly notWritten: readonly Condition[];
  /** All uncorrected changes together, one standard deviation, %. */
  readonly possiblePct: number;
}

/** Less than so much of a step is the same weather. */
const SAME_STEPS = 0.05;

/**
 * How far the conditions that changed from one lot of pulls to another, and that are not corrected for, may
 * have moved the peak: what to hold a drift against before anyone looks for a leak.
 *
 * @param model from `fitConditions` on the earlier pulls
 * @param earlier conditions of the pulls that later ones are held against
 * @param later conditions of those pulls
 * @throws NotFiniteError naming the condition
 * Source: the model's own belief in the effects that it calls unknown, whose sizes are common practice, no
 * source; independent uncertainties added in quadrature, JCGM 100:2008, 5.1.2.
 */
export function shiftByConditions(
  model: ConditionsModel,
  earlier: readonly PullConditions[],
  later: readonly PullConditions[],
): ConditionShift {
  const uncorrected: UncorrectedChange[] = [];
  const notWritten: Condition[] = [];
  CONDITIONS.forEach((facts, index) => {
    const effect = model.effects[index];
    if (effect === undefined || effect.status !== 'unknown') return;
    const [from, to] = [meanOf(facts, earlier, 'earlier'), meanOf(facts, later, 'later')];
    if (from === null || to === null) {
      notWritten.push(facts.condition);
      return;
    }
    const steps = (to - from) / facts.step;
    if (Math.abs(steps) < SAME_STEPS) return;
    const { condition } = facts;
    uncorrected.push({ condition, change: to - from, possiblePct: Math.abs(steps) * sizeOf(effect) });
  });
  const squares = uncorrected.reduce((sum, { possiblePct }) => sum + possiblePct ** 2, 0);
  return { uncorrected, notWritten, possiblePct: Math.sqrt(squares) };
}

/** How large an unknown effect may be for one step: its mean and its uncertainty together. */
function sizeOf({ effectPct, uncertaintyPct }: ConditionEffect): number {
  return Math.hypot(effectPct, uncertaintyPct);
}

function meanOf({ field }: ConditionFacts, all: readonly PullConditions[], name: string): number | null {
  const values = all.flatMap((conditions) => conditions[field] ?? []);
  values.forEach((value) => requireNumber('shiftByConditions', `${name} ${field}`, value));
  return values.length === 0 ? null : values.reduce((sum, value) => sum + value, 0) / values.length;
}
