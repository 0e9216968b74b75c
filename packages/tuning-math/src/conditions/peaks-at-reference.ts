import { CONDITIONS, stepsFromReference } from './condition-facts.js';
import { requireNumber } from '../require-number.js';
import { checkConditions } from './fit-conditions.js';
import type { Condition, ConditionedPull, ConditionsModel } from './conditions-types.js';

/** A recorded peak, brought to reference conditions. */
export interface ReferencePeak {
  readonly peakKpa: number;
  /** Standard uncertainty of the correction alone, kPa. */
  readonly correctionUncertaintyKpa: number;
  /** Conditions away from reference whose effect is unknown: the figure is not corrected for them. */
  readonly notCorrectedFor: readonly Condition[];
}

/**
 * Recorded peaks as they would have been at the model's reference conditions: what charts over months and
 * seasons compare. Only effects that the pulls tell of are corrected for.
 *
 * @param model from `fitConditions`
 * @param pulls any pulls of the preset, also later ones
 * @returns one figure for each pull
 * @throws NotFiniteError, OutOfRangeError
 * Source: posterior mean of the model's effects; see `fitConditions`.
 */
export function peaksAtReference(model: ConditionsModel, pulls: readonly ConditionedPull[]): ReferencePeak[] {
  return pulls.map((pull, index) => {
    requireNumber('peaksAtReference', `pulls[${index}].peakKpa`, pull.peakKpa, { min: 0, max: 1000 });
    checkConditions(`pulls[${index}].conditions`, pull.conditions, 'peaksAtReference');
    return correctPull(model, pull);
  });
}

function correctPull(model: ConditionsModel, pull: ConditionedPull): ReferencePeak {
  let [correctionPct, variance] = [0, 0];
  const notCorrectedFor: Condition[] = [];
  CONDITIONS.forEach((facts, index) => {
    const effect = model.effects[index];
    const steps = stepsFromReference(facts, pull.conditions, model.reference);
    if (effect === undefined || steps === 0) return;
    if (steps === null || effect.status === 'unknown') {
      notCorrectedFor.push(facts.condition);
      return;
    }
    correctionPct += steps * effect.effectPct;
    variance += (steps * effect.uncertaintyPct) ** 2;
  });
  return {
    peakKpa: pull.peakKpa - (model.scaleKpa * correctionPct) / 100,
    correctionUncertaintyKpa: (model.scaleKpa * Math.sqrt(variance)) / 100,
    notCorrectedFor,
  };
}
