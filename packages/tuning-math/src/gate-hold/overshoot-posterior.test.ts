import { CholeskyDecomposition, inverse, Matrix } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { JITTERS, LET_GO_PLACES, riseAt, SCATTERS } from './curve-family.js';
import type { HoldPull } from './gate-hold-types.js';
import { holdPrior } from './hold-prior.js';
import { overshootPosterior, type HoldPosterior } from './overshoot-posterior.js';
import { TYPICAL_OVERSHOOT_PCT } from './settled-belief.js';

const settledKpa = 100;
const pulls: readonly HoldPull[] = [
  [50, 1.4],
  [50, 2.1],
  [76, 4.9],
  [60, 1.8],
  [70, 2.6],
  [76, 3.7],
].map(([holdPct = 0, overshootPct = 0]) => ({
  holdPct,
  settledKpa,
  peakKpa: settledKpa * (1 + overshootPct / 100),
  riseTimeS: 1.1,
}));
/** Spread of the overshoot without hold before any pull, %; the level that all pulls share. */
const LEVEL_SPREAD_PCT = 5;

/** Rises of one curve at a hold, one for each place of letting go. */
function risesOf(posterior: HoldPosterior, curve: number, holdPct: number): number[] {
  const shape = posterior.shapes[curve];
  if (shape === undefined) throw new Error('no such curve');
  const jitterPct = posterior.jitterPct[curve] ?? NaN;
  return LET_GO_PLACES.map((place) =>
    riseAt(holdPct - shape.kneePct + place * jitterPct, shape.slope, shape.widthPct),
  );
}

function logPrior(posterior: HoldPosterior, curve: number): number {
  const prior = holdPrior(pulls);
  const shape = posterior.shapes[curve];
  const shareOf = (nodes: typeof JITTERS, value: number): number =>
    nodes.find(([node]) => Math.abs(node - value) < 1e-9)?.[1] ?? NaN;
  const jitter = shareOf(JITTERS, (posterior.jitterPct[curve] ?? NaN) / prior.jitterPct);
  const scatter = shareOf(SCATTERS, Math.sqrt(posterior.scatterVariance[curve] ?? NaN));
  return Math.log((shape?.weight ?? NaN) * prior.kneeDensity(shape?.kneePct ?? NaN) * jitter * scatter);
}

/** All ways in which one entry can be taken from each row. */
function choices(rows: readonly (readonly number[])[]): number[][] {
  return rows.reduce<number[][]>(
    (ways, row) => ways.flatMap((way) => row.map((entry) => [...way, entry])),
    [[]],
  );
}

/**
 * Log density of all readings together, written out: the gate was let go at any place in each pull, and for each of
 * those ways the readings are one multivariate normal, each with its own scatter, the level in common.
 */
function logEvidence(posterior: HoldPosterior, curve: number): number {
  const scatterVariance = posterior.scatterVariance[curve] ?? NaN;
  const matrix = new Matrix(
    pulls.map((_, i) => pulls.map((__, j) => LEVEL_SPREAD_PCT ** 2 + (i === j ? scatterVariance : 0))),
  );
  const precision = inverse(matrix);
  const { lowerTriangularMatrix: factor } = new CholeskyDecomposition(matrix);
  const logRoot = factor.diagonal().reduce((sum, entry) => sum + Math.log(entry), 0);
  const squares = choices(pulls.map(({ holdPct }) => risesOf(posterior, curve, holdPct))).map((rises) => {
    const misses = Matrix.columnVector(
      pulls.map(
        ({ peakKpa }, i) => 100 * (peakKpa / settledKpa - 1) - TYPICAL_OVERSHOOT_PCT - (rises[i] ?? NaN),
      ),
    );
    return misses.transpose().mmul(precision).mmul(misses).get(0, 0);
  });
  const least = Math.min(...squares);
  const mean = squares.reduce((sum, square) => sum + Math.exp(-0.5 * (square - least)), 0) / squares.length;
  return Math.log(mean) - 0.5 * least - logRoot;
}

describe('overshootPosterior', () => {
  // Source: ml-matrix 6.15.1, the density of the multivariate normals that the model describes, written out.
  it('weighs curves as all ways of letting go together do', () => {
    const posterior = overshootPosterior(pulls, settledKpa);
    const heaviest = [...posterior.weight.keys()]
      .sort((a, b) => (posterior.weight[b] ?? 0) - (posterior.weight[a] ?? 0))
      .filter((_, place) => place % 50 === 0)
      .slice(0, 20);
    const [first = 0, ...others] = heaviest;
    const logOf = (curve: number): number => logPrior(posterior, curve) + logEvidence(posterior, curve);
    const ofFirst = logOf(first);
    expect(others).toHaveLength(19);
    const misses = others.map((curve) => {
      const ours = Math.log((posterior.weight[curve] ?? NaN) / (posterior.weight[first] ?? NaN));
      return Math.abs(ours - (logOf(curve) - ofFirst));
    });
    const upward = misses.sort((a, b) => a - b);
    // Mean and variance stand for the mixture over the ways after each pull: most curves miss by next to nothing.
    expect(upward[9]).toBeLessThan(0.001);
    expect(upward.at(-1)).toBeLessThan(0.1);
  });
});
