import { MOST_PULLS } from './check-duty-request.js';
import type { Particles } from './draw-particles.js';
import { falsePullTerms, type FalsePullTerms } from './false-pulls.js';
import { matrixTimes } from './matrix-times.js';
import { peakPrecision, type PeakPrecision } from './peak-covariance.js';
import { SCATTERS, SCATTER_SHARES } from './response-settings.js';
import { resample } from './resample.js';
import type { ScaledPulls } from './scaled-pulls.js';

/** Explanations lighter than the heaviest by more than this are not collected: e^-9. */
const DROPPED_BELOW_LOG = 9;
/** Explanations kept; beyond that they are resampled in proportion to their weight. */
const MOST_EXPLANATIONS = 800;
/** A false pull that makes an explanation this much less likely than without (log) is not worth the telling. */
const LEAST_FALSE_GAIN = -4;

/** Ways to explain the pulls: a curve, a scatter and at most one false pull each, with weights that sum to 1. */
export interface Explanations {
  readonly count: number;
  readonly particles: Int32Array;
  readonly scatters: Uint8Array;
  /** Position of the false pull, or -1. */
  readonly falsePulls: Int16Array;
  readonly weights: Float64Array;
}

/** What the explanations are weighed against. */
export interface Evidence {
  readonly pulls: ScaledPulls;
  readonly particles: Particles;
  /** Rows of `pulls.count` for each particle: log reading less log curve. */
  readonly misses: Float64Array;
}

/** All explanations that matter and the precisions that they rest on. */
export interface Explained {
  readonly explanations: Explanations;
  /** Chance that each pull is false. */
  readonly falseChances: Float64Array;
  /** One for each of `SCATTERS`. */
  readonly precisions: readonly PeakPrecision[];
}

/** Weighs every curve at every scatter, with none and with each one of the pulls taken as false. */
export function explainPulls(evidence: Evidence, surelyFalse: ReadonlySet<number>): Explained {
  const precisions = SCATTERS.map((scatter) => peakPrecision(evidence.pulls, scatter, surelyFalse));
  const collected = emptyCollection(evidence.particles.count * SCATTERS.length * 2);
  precisions.forEach((precision, scatter) => {
    const terms = falsePullTerms(precision, surelyFalse);
    for (let particle = 0; particle < evidence.particles.count; particle += 1) {
      const logWeight =
        plainLogWeight(evidence, precision, particle) + (LOG_SCATTER_SHARES[scatter] as number);
      const source = particle * SCATTERS.length + scatter;
      if (logWeight > collected.heaviest - DROPPED_BELOW_LOG) collect(collected, source, -1, logWeight);
      collectFalse(collected, terms, source, logWeight);
    }
  });
  return { ...settle(collected, evidence.pulls.count, surelyFalse), precisions };
}

const LOG_SCATTER_SHARES = SCATTER_SHARES.map((share) => Math.log(share));

/** Explanations so far; `sources` hold curve and scatter in one number. */
interface Collection {
  readonly sources: Int32Array;
  readonly falsePulls: Int16Array;
  readonly logWeights: Float64Array;
  count: number;
  heaviest: number;
}

function emptyCollection(room: number): Collection {
  return {
    sources: new Int32Array(room),
    falsePulls: new Int16Array(room),
    logWeights: new Float64Array(room),
    count: 0,
    heaviest: -Infinity,
  };
}

/** Adds one; beyond the room (far more than ever carries weight) the light ones are left out. */
function collect(collected: Collection, source: number, falsePull: number, logWeight: number): void {
  if (collected.count === collected.sources.length) return;
  if (logWeight > collected.heaviest) collected.heaviest = logWeight;
  collected.sources[collected.count] = source;
  collected.falsePulls[collected.count] = falsePull;
  collected.logWeights[collected.count] = logWeight;
  collected.count += 1;
}

/** Each pull in turn taken as false; the coefficients are those of the last `plainLogWeight`. */
function collectFalse(collected: Collection, terms: FalsePullTerms, source: number, plain: number): void {
  const { gains, lowCosts, highCosts } = terms;
  for (let j = 0; j < gains.length; j += 1) {
    const pull = coefficients[j] as number;
    const cost = (pull < 0 ? lowCosts[j] : highCosts[j]) as number;
    const gain = (gains[j] as number) * pull * pull - cost;
    if (gain < LEAST_FALSE_GAIN || plain + gain <= collected.heaviest - DROPPED_BELOW_LOG) continue;
    collect(collected, source, j, plain + gain);
  }
}

const coefficients = new Float64Array(MOST_PULLS);

/** Log weight of a curve with no pull false; leaves precision times misses in `coefficients`. */
function plainLogWeight(
  { misses, particles }: Evidence,
  { inverse, size, logDeterminant }: PeakPrecision,
  particle: number,
): number {
  const start = particle * size;
  matrixTimes(inverse, misses, start, coefficients);
  let square = 0;
  for (let i = 0; i < size; i += 1) square += (coefficients[i] as number) * (misses[start + i] as number);
  return (particles.logCorrections[particle] as number) - 0.5 * (square + logDeterminant);
}

/** Weights to shares of 1; chances that pulls are false; then no more explanations than are needed. */
function settle(
  { sources, falsePulls, logWeights, count, heaviest }: Collection,
  pullCount: number,
  surelyFalse: ReadonlySet<number>,
): Pick<Explained, 'explanations' | 'falseChances'> {
  const weights = new Float64Array(count);
  const falseChances = new Float64Array(pullCount);
  let total = 0;
  for (let index = 0; index < count; index += 1) {
    const weight = Math.exp((logWeights[index] as number) - heaviest);
    const falsePull = falsePulls[index] as number;
    weights[index] = weight;
    total += weight;
    if (falsePull >= 0) falseChances[falsePull] = (falseChances[falsePull] as number) + weight;
  }
  falseChances.forEach((weight, pull) => (falseChances[pull] = surelyFalse.has(pull) ? 1 : weight / total));
  const { rows, shares } = resample(weights, MOST_EXPLANATIONS);
  const scatterCount = SCATTERS.length;
  const explanations = {
    count: rows.length,
    particles: rows.map((row) => Math.floor((sources[row] as number) / scatterCount)),
    scatters: Uint8Array.from(rows, (row) => (sources[row] as number) % scatterCount),
    falsePulls: Int16Array.from(rows, (row) => falsePulls[row] as number),
    weights: shares,
  };
  return { explanations, falseChances };
}
