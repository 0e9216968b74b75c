import { coefficientRoom } from './coefficient-room.js';
import {
  collect,
  emptyCollection,
  fewExplanations,
  weighCollected,
  type Collection,
  type Explanations,
} from './collect-explanations.js';
import { departureModes } from './departure-modes.js';
import { doubtedPull } from './doubted-pull.js';
import type { Particles } from './draw-particles.js';
import { falsePullTerms, type FalsePullTerms } from './false-pulls.js';
import { matrixTimes } from './matrix-times.js';
import { missCoefficients } from './miss-coefficients.js';
import { peakPrecision, type PeakPrecision } from './peak-precision.js';
import { projectMisses, type ProjectedMisses } from './project-misses.js';
import { SCATTERS, SCATTER_SHARES } from './response-settings.js';
import type { ScaledPulls } from './scaled-pulls.js';

/** Explanations lighter than the heaviest by more than this are not collected: e^-10. */
const DROPPED_BELOW_LOG = 10;
/** A false pull that makes an explanation this much less likely than without (log) is not worth the telling. */
const LEAST_FALSE_GAIN = -4;
/** ... the doubted pull is, as long as that carries any weight: what lies past it is still unknown. */
const LEAST_DOUBTED_GAIN = -6;

/** What the explanations are weighed against. */
export interface Evidence {
  readonly pulls: ScaledPulls;
  readonly particles: Particles;
  /** Rows of `pulls.count` for each particle: log reading less log curve. */
  readonly misses: Float64Array;
}

/** What was weighed, before it is brought down to no more explanations than are needed. */
export interface WeighedPulls {
  /** Chance that each pull is false. */
  readonly falseChances: Float64Array;
  /** One for each of `SCATTERS`. */
  readonly precisions: readonly PeakPrecision[];
  readonly projected: ProjectedMisses;
  readonly explanations: () => Explanations;
}

/**
 * Weighs every curve at every scatter, with none and with each one of the pulls taken as false.
 *
 * Cost: O(particles · scatters · pulls · modes) where false pulls matter, else without the pulls.
 */
export function explainPulls(evidence: Evidence, surelyFalse: ReadonlySet<number>): WeighedPulls {
  const { pulls, particles, misses } = evidence;
  const modes = departureModes(pulls, surelyFalse);
  const precisions = SCATTERS.map((scatter) => peakPrecision(modes, scatter));
  const projected = projectMisses(misses, particles.count, modes);
  const plain = plainWeights(particles, precisions, projected);
  const doubted = doubtedPull(pulls);
  const leastGains = pulls.duties.map((_, pull) =>
    pull === doubted ? LEAST_DOUBTED_GAIN : LEAST_FALSE_GAIN,
  );
  const collected = emptyCollection(plain.logWeights.length, plain.heaviest);
  precisions.forEach((precision, scatter) => {
    const terms = falsePullTerms(precision, surelyFalse);
    collectAt(collected, { plain, projected, precision, terms, scatter, doubted, leastGains });
  });
  const { weights, falseChances } = weighCollected(collected, pulls.count, surelyFalse);
  return {
    falseChances,
    precisions,
    projected,
    explanations: () => fewExplanations(collected, weights, doubted),
  };
}

/** Every curve at every scatter with no pull false; the place is that of a source. */
interface PlainWeights {
  readonly logWeights: Float64Array;
  /** Misses squared, by the precision: a false pull gains half of it at most. */
  readonly squares: Float64Array;
  readonly heaviest: number;
}

function plainWeights(
  particles: Particles,
  precisions: readonly PeakPrecision[],
  { modes, squares: missSquares, alongModes }: ProjectedMisses,
): PlainWeights {
  const { count } = modes;
  const logWeights = new Float64Array(particles.count * precisions.length);
  const squares = new Float64Array(logWeights.length);
  const losses = Float64Array.from(precisions.flatMap(({ modeLosses }) => [...modeLosses]));
  const constants = precisions.map(
    ({ logDeterminant }, scatter) => (LOG_SCATTER_SHARES[scatter] as number) - 0.5 * logDeterminant,
  );
  const trusts = Float64Array.from(precisions, ({ trust }) => trust);
  const along = new Float64Array(count);
  const lost = new Float64Array(precisions.length);
  let heaviest = -Infinity;
  for (let particle = 0; particle < particles.count; particle += 1) {
    for (let mode = 0; mode < count; mode += 1)
      along[mode] = (alongModes[particle * count + mode] as number) ** 2;
    matrixTimes(losses, along, 0, lost);
    for (let scatter = 0; scatter < lost.length; scatter += 1) {
      const square =
        (trusts[scatter] as number) * (missSquares[particle] as number) - (lost[scatter] as number);
      const logWeight =
        (particles.logCorrections[particle] as number) - 0.5 * square + (constants[scatter] as number);
      const source = particle * lost.length + scatter;
      logWeights[source] = logWeight;
      squares[source] = square;
      if (logWeight > heaviest) heaviest = logWeight;
    }
  }
  return { logWeights, squares, heaviest };
}

const LOG_SCATTER_SHARES = SCATTER_SHARES.map((share) => Math.log(share));

interface AtScatter {
  readonly plain: PlainWeights;
  readonly projected: ProjectedMisses;
  readonly precision: PeakPrecision;
  readonly terms: FalsePullTerms;
  readonly scatter: number;
  readonly doubted: number;
  /** For each pull, the least gain that is told. */
  readonly leastGains: Float64Array;
}

/**
 * Every curve at one scatter, with none and with each one of the pulls taken as false where that can matter. Most of a
 * decision's time is spent here.
 */
function collectAt(collected: Collection, question: AtScatter): void {
  const { plain, projected, precision, terms, scatter, doubted, leastGains } = question;
  const { logWeights, squares } = plain;
  const { leastCost, mostGain } = terms;
  const size = projected.modes.heats.length;
  const room = coefficientRoom(projected.modes);
  for (let curve = 0, source = scatter; source < logWeights.length; curve += 1, source += SCATTERS.length) {
    const logWeight = logWeights[source] as number;
    const lightest = collected.heaviest - DROPPED_BELOW_LOG;
    if (logWeight > lightest) collect(collected, source, -1, logWeight);
    if (logWeight + 0.5 * (squares[source] as number) - leastCost <= lightest) continue;
    missCoefficients(projected, precision, curve, room);
    const largest = largestSquare(room.coefficients);
    const lookAtAll = mostGain * largest - leastCost >= Math.max(LEAST_FALSE_GAIN, lightest - logWeight);
    const [from, to] = lookAtAll ? [0, size - 1] : [doubted, doubted];
    collectFalse(collected, terms, room.coefficients, { source, logWeight, from, to, leastGains });
  }
}

function largestSquare(values: Float64Array): number {
  let largest = 0;
  for (let at = 0; at < values.length; at += 1) {
    const square = (values[at] as number) * (values[at] as number);
    if (square > largest) largest = square;
  }
  return largest;
}

/** A curve and scatter that weigh so much with no pull false, and the pulls to look at. */
interface PlainExplanation {
  readonly source: number;
  readonly logWeight: number;
  readonly from: number;
  readonly to: number;
  readonly leastGains: Float64Array;
}

/** Each of the pulls taken as false in turn. */
function collectFalse(
  collected: Collection,
  { gains, lowCosts, highCosts }: FalsePullTerms,
  coefficients: Float64Array,
  { source, logWeight, from, to, leastGains }: PlainExplanation,
): void {
  for (let pull = Math.max(from, 0); pull <= to; pull += 1) {
    const coefficient = coefficients[pull] as number;
    const cost = (coefficient < 0 ? lowCosts[pull] : highCosts[pull]) as number;
    const gain = (gains[pull] as number) * coefficient * coefficient - cost;
    if (gain < (leastGains[pull] as number)) continue;
    if (logWeight + gain <= collected.heaviest - DROPPED_BELOW_LOG) continue;
    collect(collected, source, pull, logWeight + gain);
  }
}
