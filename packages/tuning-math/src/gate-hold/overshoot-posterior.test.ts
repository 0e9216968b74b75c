import { CholeskyDecomposition, inverse, Matrix } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { EARLY_SHARE, JITTERS, LET_GO_PLACE, MIDDLE_SHARE, riseAt, SCATTERS } from './curve-family.js';
import type { HoldPull } from './gate-hold-types.js';
import { holdPrior } from './hold-prior.js';
import { overshootPosterior, type HoldPosterior } from './overshoot-posterior.js';
import { TYPICAL_OVERSHOOT_PCT } from './settled-belief.js';

const settledKpa = 100;
const pulls: readonly HoldPull[] = [
  [50, 1.4],
  [50, 2.1],
  [60, 1.8],
  [70, 2.6],
  [76, 4.9],
  [76, 3.7],
].map(([holdPct = 0, overshootPct = 0]) => ({
  holdPct,
  settledKpa,
  peakKpa: settledKpa * (1 + overshootPct / 100),
  riseTimeS: 1.1,
}));
/** Spread of the overshoot without hold before any pull, %; the level that all pulls share. */
const LEVEL_SPREAD_PCT = 5;

/** Mean and variance of the rise of one curve at a hold: three places of letting go. */
function riseOf(posterior: HoldPosterior, curve: number, holdPct: number): [mean: number, variance: number] {
  const shape = posterior.shapes[curve];
  if (shape === undefined) throw new Error('no such curve');
  const aside = (posterior.jitterPct[curve] ?? NaN) * LET_GO_PLACE;
  const at = (away: number): number => riseAt(holdPct - shape.kneePct + away, shape.slope, shape.widthPct);
  const rises: readonly (readonly [number, number])[] = [
    [at(-aside), EARLY_SHARE],
    [at(0), MIDDLE_SHARE],
    [at(aside), EARLY_SHARE],
  ];
  const mean = rises.reduce((sum, [rise, share]) => sum + share * rise, 0);
  return [mean, rises.reduce((sum, [rise, share]) => sum + share * (rise - mean) ** 2, 0)];
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

/** Log density of all readings together, as one multivariate normal: each its own variance, the level in common. */
function logEvidence(posterior: HoldPosterior, curve: number): number {
  const rises = pulls.map(({ holdPct }) => riseOf(posterior, curve, holdPct));
  const matrix = new Matrix(
    rises.map(([, variance], i) =>
      rises.map(
        (_, j) =>
          LEVEL_SPREAD_PCT ** 2 + (i === j ? variance + (posterior.scatterVariance[curve] ?? NaN) : 0),
      ),
    ),
  );
  const misses = Matrix.columnVector(
    pulls.map(
      ({ peakKpa }, i) => 100 * (peakKpa / settledKpa - 1) - TYPICAL_OVERSHOOT_PCT - (rises[i]?.[0] ?? NaN),
    ),
  );
  const square = misses.transpose().mmul(inverse(matrix)).mmul(misses).get(0, 0);
  const { lowerTriangularMatrix: factor } = new CholeskyDecomposition(matrix);
  return -0.5 * square - factor.diagonal().reduce((sum, entry) => sum + Math.log(entry), 0);
}

describe('overshootPosterior', () => {
  // Source: ml-matrix 6.15.1, the density of the multivariate normal that the model describes, written out.
  it('weighs curves as the multivariate normal of their readings does', () => {
    const posterior = overshootPosterior(pulls, settledKpa);
    const heaviest = [...posterior.weight.keys()]
      .sort((a, b) => (posterior.weight[b] ?? 0) - (posterior.weight[a] ?? 0))
      .slice(0, 200);
    const [first = 0, ...others] = heaviest;
    const logOf = (curve: number): number => logPrior(posterior, curve) + logEvidence(posterior, curve);
    expect(others).toHaveLength(199);
    for (const curve of others) {
      const ours = Math.log((posterior.weight[curve] ?? NaN) / (posterior.weight[first] ?? NaN));
      expect(ours).toBeCloseTo(logOf(curve) - logOf(first), 8);
    }
  });
});
