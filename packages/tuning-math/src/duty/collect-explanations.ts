import { resample, type Resampled } from './resample.js';
import { SCATTERS } from './response-settings.js';

/**
 * Explanations kept; beyond that they are resampled in proportion to their weight. Those that take the doubted pull as false
 * have a part of their own: they are few, and what lies past a falsely low reading is told by them alone.
 */
const MOST_EXPLANATIONS = 600;
const MOST_WITH_DOUBTED_FALSE = 200;

/** Ways to explain the pulls: a curve, a scatter and at most one false pull each, with weights that sum to 1. */
export interface Explanations {
  readonly count: number;
  readonly particles: Int32Array;
  readonly scatters: Uint8Array;
  /** Position of the false pull, or -1. */
  readonly falsePulls: Int16Array;
  readonly weights: Float64Array;
}

/** Explanations so far; `sources` hold curve and scatter in one number. */
export interface Collection {
  sources: Int32Array;
  falsePulls: Int16Array;
  logWeights: Float64Array;
  count: number;
  heaviest: number;
}

/** Room for some explanations to begin with; the heaviest may be known before they are collected. */
export function emptyCollection(room: number, heaviest: number): Collection {
  return {
    sources: new Int32Array(room),
    falsePulls: new Int16Array(room),
    logWeights: new Float64Array(room),
    count: 0,
    heaviest,
  };
}

/** Adds one. */
export function collect(collected: Collection, source: number, falsePull: number, logWeight: number): void {
  if (collected.count === collected.sources.length) makeRoom(collected);
  if (logWeight > collected.heaviest) collected.heaviest = logWeight;
  collected.sources[collected.count] = source;
  collected.falsePulls[collected.count] = falsePull;
  collected.logWeights[collected.count] = logWeight;
  collected.count += 1;
}

/** Twice the room. */
function makeRoom(collected: Collection): void {
  const { sources, falsePulls, logWeights, count } = collected;
  collected.sources = new Int32Array(2 * count + 1);
  collected.falsePulls = new Int16Array(2 * count + 1);
  collected.logWeights = new Float64Array(2 * count + 1);
  collected.sources.set(sources);
  collected.falsePulls.set(falsePulls);
  collected.logWeights.set(logWeights);
}

interface Weighed {
  readonly weights: Float64Array;
  readonly falseChances: Float64Array;
}

/** Logs to weights, and chances that pulls are false. */
export function weighCollected(
  { falsePulls, logWeights, count, heaviest }: Collection,
  pullCount: number,
  surelyFalse: ReadonlySet<number>,
): Weighed {
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
  return { weights, falseChances };
}

/** No more explanations than are needed, with shares that sum to 1. */
export function fewExplanations(
  { sources, falsePulls }: Collection,
  weights: Float64Array,
  doubted: number,
): Explanations {
  const others = new Float64Array(weights.length);
  const doubtedFalse = new Float64Array(weights.length);
  for (let row = 0; row < weights.length; row += 1)
    (falsePulls[row] === doubted ? doubtedFalse : others)[row] = weights[row] as number;
  const [shareOfOthers, shareOfDoubted] = sharesOf(totalOf(others), totalOf(doubtedFalse));
  const most = shareOfOthers > 0 ? resample(others, MOST_EXPLANATIONS) : NONE_KEPT;
  const few = shareOfDoubted > 0 ? resample(doubtedFalse, MOST_WITH_DOUBTED_FALSE) : NONE_KEPT;
  const rows = new Int32Array(most.rows.length + few.rows.length);
  rows.set(most.rows);
  rows.set(few.rows, most.rows.length);
  const shares = new Float64Array(rows.length);
  most.shares.forEach((share, at) => (shares[at] = share * shareOfOthers));
  few.shares.forEach((share, at) => (shares[most.rows.length + at] = share * shareOfDoubted));
  const scatterCount = SCATTERS.length;
  return {
    count: rows.length,
    particles: rows.map((row) => Math.floor((sources[row] as number) / scatterCount)),
    scatters: Uint8Array.from(rows, (row) => (sources[row] as number) % scatterCount),
    falsePulls: Int16Array.from(rows, (row) => falsePulls[row] as number),
    weights: shares,
  };
}

const NONE_KEPT: Resampled = { rows: new Int32Array(0), shares: new Float64Array(0) };

function sharesOf(one: number, other: number): [number, number] {
  return [one / (one + other), other / (one + other)];
}

function totalOf(weights: Float64Array): number {
  let total = 0;
  for (const weight of weights) total += weight;
  return total;
}
