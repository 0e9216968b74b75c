import { CholeskyDecomposition, Matrix } from 'ml-matrix';
import { requireNumber } from '../require-number.js';
import { TooFewPointsError } from '../errors.js';
import { COMMON_REFERENCE, CONDITIONS, stepsFromReference, type ConditionFacts } from './condition-facts.js';
import type {
  Condition,
  ConditionedPull,
  ConditionEffect,
  ConditionsModel,
  EffectStatus,
  KnownConditions,
  PullConditions,
  ScatterBelief,
} from './conditions-types.js';

const NAME = 'fitConditions';
/** Scatter of single pulls thought possible, % of peak: common practice is somewhat over 1 %. */
const SCATTERS_PCT = [0.4, 0.55, 0.75, 1, 1.35, 1.8, 2.4, 3.2];
const SCATTER_CENTRE_LOG = Math.log(1.1);
const SCATTER_WIDTH_LOG = 0.45;
/** Before any pull the peak at reference may lie this far from the scale, %. */
const LEVEL_PRIOR_PCT = 15;
/** An effect whose uncertainty the pulls have not cut to this share of the prior's is unknown. */
const TOLD_RATIO = 0.7;
const SEEN_SIGMAS = 2;
const MAX_PULLS = 2000;

/**
 * How gear, gradient, intake air, barometer and heat soak move the peak of a preset, from its pulls. The
 * effects are held small until the pulls speak for them (ridge regression in Bayesian form), and are called
 * unknown where the pulls do not tell: a season of pulls in one gear says nothing about another.
 *
 * @param pulls usable pulls at one setting, at least 1; conditions may be null
 * @param reference what differs from the usual reference: the most frequent gear, level road, 20 °C intake
 *   air, 100 kPa, no heat soak
 * @returns effects with their uncertainty and status, and the belief that forecasts rest on
 * @throws TooFewPointsError, NotFiniteError, OutOfRangeError naming pull and condition
 * Cost: O(n) for the 8 levels of scatter that it averages over.
 * Source: Bayesian linear regression with normal priors (Bishop, Pattern Recognition and Machine Learning,
 * section 3.3), averaged over the unknown scatter on a grid; priors are common practice, no source.
 */
export function fitConditions(
  pulls: readonly ConditionedPull[],
  reference: Partial<KnownConditions> = {},
): ConditionsModel {
  checkPulls(pulls);
  const full: KnownConditions = { ...COMMON_REFERENCE, ...usualGear(pulls), ...reference };
  checkConditions('reference', full);
  const scaleKpa = pulls.reduce((sum, pull) => sum + pull.peakKpa, 0) / pulls.length;
  const rows = pulls.map((pull) => toRow(pull, full, scaleKpa));
  const fitted = SCATTERS_PCT.map((scatterPct) => fitAtScatter(rows, scatterPct));
  const best = Math.max(...fitted.map(({ logEvidence }) => logEvidence));
  const weights = fitted.map(({ logEvidence }) => Math.exp(logEvidence - best));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const beliefs = fitted.map(({ belief }, index) => ({ ...belief, weight: (weights[index] ?? 0) / total }));
  return {
    reference: full,
    scaleKpa,
    pullCount: pulls.length,
    effects: CONDITIONS.map((facts, index) => readEffect(facts, beliefs, index + 1)),
    beliefs,
    ranges: readRanges(pulls),
  };
}

/** One pull as the regression sees it. */
interface Row {
  /** 1, then the steps from reference; 0 where the condition is not known. */
  readonly x: readonly number[];
  /** Distance of the peak from the scale, %. */
  readonly y: number;
  /** Variance that the unknown conditions add, %². */
  readonly extraVariance: number;
}

function toRow(pull: ConditionedPull, reference: KnownConditions, scaleKpa: number): Row {
  const steps = CONDITIONS.map((facts) => stepsFromReference(facts, pull.conditions, reference));
  const extraVariance = CONDITIONS.reduce(
    (sum, facts, index) => sum + (steps[index] === null ? facts.priorPct ** 2 : 0),
    0,
  );
  return { x: [1, ...steps.map((step) => step ?? 0)], y: 100 * (pull.peakKpa / scaleKpa - 1), extraVariance };
}

function fitAtScatter(
  rows: readonly Row[],
  scatterPct: number,
): { belief: ScatterBelief; logEvidence: number } {
  const priorSds = [LEVEL_PRIOR_PCT, ...CONDITIONS.map((facts) => facts.priorPct)];
  const precision = Matrix.diag(priorSds.map((sd) => 1 / (sd * sd)));
  const moment = new Array<number>(priorSds.length).fill(0);
  let [squares, logVariances] = [0, 0];
  for (const { x, y, extraVariance } of rows) {
    const variance = scatterPct ** 2 + extraVariance;
    squares += (y * y) / variance;
    logVariances += Math.log(variance);
    x.forEach((a, i) => {
      moment[i] = (moment[i] ?? 0) + (a * y) / variance;
      x.forEach((b, j) => precision.set(i, j, precision.get(i, j) + (a * b) / variance));
    });
  }
  const cholesky = new CholeskyDecomposition(precision);
  const covariance = cholesky.solve(Matrix.eye(priorSds.length));
  const mean = covariance.mmul(Matrix.columnVector(moment)).to1DArray();
  const explained = mean.reduce((sum, value, index) => sum + value * (moment[index] ?? 0), 0);
  const logDeterminant =
    2 * cholesky.lowerTriangularMatrix.diagonal().reduce((sum, value) => sum + Math.log(value), 0);
  const fromCentre = (Math.log(scatterPct) - SCATTER_CENTRE_LOG) / SCATTER_WIDTH_LOG;
  const logEvidence = -0.5 * (logVariances + squares - explained + logDeterminant + fromCentre ** 2);
  return { belief: { weight: 1, scatterPct, mean, covariance: covariance.to2DArray() }, logEvidence };
}

function readEffect(
  facts: ConditionFacts,
  beliefs: readonly ScatterBelief[],
  index: number,
): ConditionEffect {
  const effectPct = beliefs.reduce((sum, { weight, mean }) => sum + weight * (mean[index] ?? 0), 0);
  const variance = beliefs.reduce((sum, { weight, mean, covariance }) => {
    return sum + weight * ((covariance[index]?.[index] ?? 0) + ((mean[index] ?? 0) - effectPct) ** 2);
  }, 0);
  const uncertaintyPct = Math.sqrt(variance);
  const status: EffectStatus =
    uncertaintyPct > TOLD_RATIO * facts.priorPct
      ? 'unknown'
      : Math.abs(effectPct) > SEEN_SIGMAS * uncertaintyPct
        ? 'seen'
        : 'none-seen';
  return { condition: facts.condition, status, effectPct, uncertaintyPct, unit: facts.unit };
}

function readRanges(pulls: readonly ConditionedPull[]): ConditionsModel['ranges'] {
  const entries = CONDITIONS.map(({ condition, field }) => {
    const values = pulls.flatMap((pull) => pull.conditions[field] ?? []);
    const range = values.length === 0 ? null : ([Math.min(...values), Math.max(...values)] as const);
    return [condition, range] as const;
  });
  return Object.fromEntries(entries) as Record<Condition, readonly [number, number] | null>;
}

function usualGear(pulls: readonly ConditionedPull[]): { gear?: number } {
  const counts = new Map<number, number>();
  for (const { conditions } of pulls) {
    if (conditions.gear !== null) counts.set(conditions.gear, (counts.get(conditions.gear) ?? 0) + 1);
  }
  const [most] = [...counts].sort(([gearA, a], [gearB, b]) => b - a || gearB - gearA);
  return most === undefined ? {} : { gear: most[0] };
}

function checkPulls(pulls: readonly ConditionedPull[]): void {
  if (pulls.length === 0 || pulls.length > MAX_PULLS) {
    const allowed = `to be 1 to ${MAX_PULLS}`;
    throw new TooFewPointsError(NAME, { argument: 'pulls', value: `${pulls.length} of them`, allowed });
  }
  pulls.forEach(({ peakKpa, conditions }, index) => {
    requireNumber(NAME, `pulls[${index}].peakKpa`, peakKpa, { min: 0, max: 1000, exclusive: true });
    checkConditions(`pulls[${index}].conditions`, conditions);
  });
}

/** Refuses conditions that no pull is driven in. @throws NotFiniteError, OutOfRangeError */
export function checkConditions(argument: string, conditions: PullConditions, functionName = NAME): void {
  for (const { field, min, max } of CONDITIONS) {
    const value = conditions[field];
    if (value !== null) requireNumber(functionName, `${argument}.${field}`, value, { min, max });
  }
}
