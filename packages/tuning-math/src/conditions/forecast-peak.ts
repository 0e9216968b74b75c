import { findRoot } from '../numerics/find-root.js';
import { normalCdf } from '../numerics/normal-cdf.js';
import { requireNumber } from '../require-number.js';
import { CONDITIONS, stepsFromReference } from './condition-facts.js';
import type { Condition, ConditionsModel, KnownConditions } from './conditions-types.js';
import { checkConditions } from './fit-conditions.js';

/** Which forecast is wanted. */
export interface ForecastOptions {
  /** Level that no pull may pass, kPa gauge. */
  readonly ceilingKpa: number;
  /** Share of pulls that the range is to hold; 0.95 by default. */
  readonly level?: number;
}

/** What a preset will peak at under given conditions. */
export interface PeakForecast {
  readonly medianKpa: number;
  readonly lowKpa: number;
  readonly highKpa: number;
  readonly level: number;
  /** Chance that a pull passes the ceiling, 0 to 1. */
  readonly probabilityOverCeiling: number;
  /** Conditions away from those of the pulls whose effect the pulls do not tell: the range allows for them. */
  readonly unknown: readonly Condition[];
  /** Conditions outside the range of the pulls. */
  readonly outside: readonly Condition[];
}

interface Normal {
  readonly weight: number;
  readonly meanKpa: number;
  readonly sdKpa: number;
}

/**
 * What a preset will peak at on a cold morning, up a pass, in a lower gear: range of a single pull and its
 * chance of passing the ceiling. What the pulls do not tell widens the range and is named.
 *
 * @param model from `fitConditions`
 * @param conditions all known
 * @throws NotFiniteError, OutOfRangeError
 * Source: posterior predictive distribution of the model (Bishop, section 3.3.2), a mixture of normals.
 */
export function forecastPeak(
  model: ConditionsModel,
  conditions: KnownConditions,
  { ceilingKpa, level = 0.95 }: ForecastOptions,
): PeakForecast {
  checkConditions('conditions', conditions, 'forecastPeak');
  requireNumber('forecastPeak', 'ceilingKpa', ceilingKpa, { min: 0, max: 1000 });
  requireNumber('forecastPeak', 'level', level, { min: 0, max: 1, exclusive: true });
  const mixture = predictive(model, conditions);
  return {
    medianKpa: quantile(mixture, 0.5),
    lowKpa: quantile(mixture, 0.5 - level / 2),
    highKpa: quantile(mixture, 0.5 + level / 2),
    level,
    probabilityOverCeiling: mixture.reduce(
      (sum, { weight, meanKpa, sdKpa }) => sum + weight * normalCdf((meanKpa - ceilingKpa) / sdKpa),
      0,
    ),
    unknown: awayFromPulls(model, conditions).filter((condition) => isUnknown(model, condition)),
    outside: awayFromPulls(model, conditions),
  };
}

function predictive(model: ConditionsModel, conditions: KnownConditions): Normal[] {
  const x = [1, ...CONDITIONS.map((facts) => stepsFromReference(facts, conditions, model.reference) ?? 0)];
  return model.beliefs.map(({ weight, mean, covariance, scatterPct }) => {
    const centrePct = x.reduce((sum, step, index) => sum + step * (mean[index] ?? 0), 0);
    const variance = x.reduce((sum, a, i) => {
      return sum + x.reduce((inner, b, j) => inner + a * b * (covariance[i]?.[j] ?? 0), 0);
    }, scatterPct ** 2);
    return {
      weight,
      meanKpa: model.scaleKpa * (1 + centrePct / 100),
      sdKpa: (model.scaleKpa * Math.sqrt(variance)) / 100,
    };
  });
}

function quantile(mixture: readonly Normal[], share: number): number {
  const miss = (kpa: number): number =>
    mixture.reduce(
      (sum, { weight, meanKpa, sdKpa }) => sum + weight * normalCdf((kpa - meanKpa) / sdKpa),
      -share,
    );
  let [low, high] = [
    Math.min(...mixture.map(({ meanKpa, sdKpa }) => meanKpa - 4 * sdKpa)),
    Math.max(...mixture.map(({ meanKpa, sdKpa }) => meanKpa + 4 * sdKpa)),
  ];
  const width = high - low;
  while (miss(low) > 0) low -= width;
  while (miss(high) < 0) high += width;
  return findRoot(miss, { low, high, tolerance: 1e-9 * width }).x;
}

/** Half a step beyond the pulls' range still counts as the same conditions. */
const SLACK_STEPS = 0.5;

function awayFromPulls(model: ConditionsModel, conditions: KnownConditions): Condition[] {
  return CONDITIONS.filter(({ condition, field, step }) => {
    const range = model.ranges[condition];
    if (range === null) return Math.abs(conditions[field] - model.reference[field]) > SLACK_STEPS * step;
    const [low, high] = range;
    return conditions[field] < low - SLACK_STEPS * step || conditions[field] > high + SLACK_STEPS * step;
  }).map(({ condition }) => condition);
}

function isUnknown(model: ConditionsModel, condition: Condition): boolean {
  return model.effects.some((effect) => effect.condition === condition && effect.status === 'unknown');
}
