import { MOST_PULLS } from './check-duty-request.js';
import { dotProduct } from './dot-product.js';
import type { Particles } from './draw-particles.js';
import { falseLogOdds, falsePullTerms, type FalsePullTerms } from './false-pulls.js';
import { peakPrecision, type PeakPrecision } from './peak-covariance.js';
import { SCATTERS, SCATTER_SHARES } from './response-settings.js';
import type { ScaledPulls } from './scaled-pulls.js';

/** Explanations lighter than this share of the heaviest are dropped: e^-9, about 1 in 8000. */
const DROPPED_BELOW_LOG = 9;

/** One way to explain the pulls: a curve, a scatter and at most one false pull, with its weight. */
export interface Explanation {
  readonly particle: number;
  readonly scatter: number;
  /** Position of the false pull, or -1. */
  readonly falsePull: number;
  /** Log while they are collected, then a share of 1. */
  readonly weight: number;
}

/** What the explanations are weighed against. */
export interface Evidence {
  readonly pulls: ScaledPulls;
  readonly particles: Particles;
  /** Rows of `pulls.count` for each particle: log reading less log curve. */
  readonly misses: Float64Array;
}

/** All explanations that matter, weights summing to 1, and the precisions that they rest on. */
export interface Explained {
  readonly explanations: readonly Explanation[];
  readonly precisions: readonly PeakPrecision[];
}

/** Weighs every curve at every scatter, with none and with each one of the pulls taken as false. */
export function explainPulls(evidence: Evidence, surelyFalse: ReadonlySet<number>): Explained {
  const precisions = SCATTERS.map((scatter) => peakPrecision(evidence.pulls, scatter, surelyFalse));
  const collected: Explanation[] = [];
  let highest = -Infinity;
  precisions.forEach((precision, scatter) => {
    const weigher = { evidence, precision, terms: falsePullTerms(precision), surelyFalse };
    for (let particle = 0; particle < evidence.particles.count; particle += 1) {
      highest = Math.max(highest, collect(weigher, { particle, scatter, highest }, collected));
    }
  });
  return { explanations: normalised(collected, highest), precisions };
}

interface Weigher {
  readonly evidence: Evidence;
  readonly precision: PeakPrecision;
  readonly terms: FalsePullTerms;
  readonly surelyFalse: ReadonlySet<number>;
}

interface Pair {
  readonly particle: number;
  readonly scatter: number;
  readonly highest: number;
}

/** Adds the explanations of one curve at one scatter; returns the heaviest log weight among them. */
function collect(weigher: Weigher, pair: Pair, into: Explanation[]): number {
  const { evidence, precision } = weigher;
  const { particle, scatter } = pair;
  const square = solve(precision, evidence.misses, particle * precision.size);
  const plain =
    (evidence.particles.logCorrections[particle] as number) +
    Math.log(SCATTER_SHARES[scatter] as number) -
    0.5 * (square + precision.logDeterminant);
  const heaviest = Math.max(pair.highest, plain);
  if (plain > heaviest - DROPPED_BELOW_LOG) into.push({ particle, scatter, falsePull: -1, weight: plain });
  return collectFalse(weigher, { ...pair, plain, highest: heaviest }, into);
}

/** The same with each pull in turn taken as false; the coefficients are those of the last `solve`. */
function collectFalse(weigher: Weigher, pair: Pair & { plain: number }, into: Explanation[]): number {
  const { precision, terms, surelyFalse } = weigher;
  let heaviest = pair.highest;
  for (let j = 0; j < precision.size; j += 1) {
    if (surelyFalse.has(j)) continue;
    const pull = coefficients[j] as number;
    const gain = (terms.gains[j] as number) * pull * pull - (terms.costs[j] as number);
    const weight = pair.plain + gain + falseLogOdds(pull);
    if (weight <= heaviest - DROPPED_BELOW_LOG) continue;
    into.push({ particle: pair.particle, scatter: pair.scatter, falsePull: j, weight });
    if (weight > heaviest) heaviest = weight;
  }
  return heaviest;
}

const coefficients = new Float64Array(MOST_PULLS);

/** Fills `coefficients` with precision times misses and returns misses times that. */
function solve({ inverse, size }: PeakPrecision, misses: Float64Array, start: number): number {
  for (let i = 0; i < size; i += 1) {
    coefficients[i] = dotProduct({ values: inverse, start: i * size }, { values: misses, start }, size);
  }
  return dotProduct({ values: coefficients, start: 0 }, { values: misses, start }, size);
}

function normalised(collected: readonly Explanation[], highest: number): Explanation[] {
  const kept = collected.filter(({ weight }) => weight > highest - DROPPED_BELOW_LOG);
  const total = kept.reduce((sum, { weight }) => sum + Math.exp(weight - highest), 0);
  return kept.map((one) => ({ ...one, weight: Math.exp(one.weight - highest) / total }));
}
