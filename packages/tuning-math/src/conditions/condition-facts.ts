import type { Condition, KnownConditions, PullConditions } from './conditions-types.js';

/** How a condition enters the model. */
export interface ConditionFacts {
  readonly condition: Condition;
  readonly field: keyof PullConditions;
  /** Size of the step that effects are told for, and its words. */
  readonly step: number;
  readonly unit: string;
  /** How large an effect for each step is thought possible before any pull, % (one standard deviation). */
  readonly priorPct: number;
  readonly min: number;
  readonly max: number;
}

/**
 * All conditions, in the order of the model's coefficients. The priors say no more than that a step of the
 * condition moves the peak by some per cent either way: common practice, no source.
 */
export const CONDITIONS: readonly ConditionFacts[] = [
  { condition: 'gear', field: 'gear', step: 1, unit: 'gear', priorPct: 2, min: 1, max: 10 },
  {
    condition: 'gradient',
    field: 'gradientPct',
    step: 1,
    unit: '1 % gradient',
    priorPct: 0.3,
    min: -30,
    max: 30,
  },
  {
    condition: 'intake',
    field: 'intakeC',
    step: 10,
    unit: '10 K intake air',
    priorPct: 1,
    min: -45,
    max: 90,
  },
  {
    condition: 'barometer',
    field: 'barometerAbsKpa',
    step: 10,
    unit: '10 kPa barometer',
    priorPct: 3,
    min: 50,
    max: 115,
  },
  {
    condition: 'heatSoak',
    field: 'heatSoakC',
    step: 10,
    unit: '10 K heat soak',
    priorPct: 1,
    min: -40,
    max: 100,
  },
];

/** Reference where neither caller nor data say otherwise. */
export const COMMON_REFERENCE: KnownConditions = {
  gear: 4,
  gradientPct: 0,
  intakeC: 20,
  barometerAbsKpa: 100,
  heatSoakC: 0,
};

/** Distance of a condition from the reference, in steps; null where it is not known. */
export function stepsFromReference(
  facts: ConditionFacts,
  conditions: PullConditions,
  reference: KnownConditions,
): number | null {
  const value = conditions[facts.field];
  return value === null ? null : (value - reference[facts.field]) / facts.step;
}
