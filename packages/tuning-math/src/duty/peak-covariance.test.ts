import { CholeskyDecomposition, inverse, Matrix } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { falsePullTerms } from './false-pulls.js';
import { departureModes } from './departure-modes.js';
import { departureCovariance } from './peak-covariance.js';
import { peakPrecision, type PeakPrecision } from './peak-precision.js';
import { FALSE_STRAY } from './response-settings.js';
import { scalePulls } from './scaled-pulls.js';

const goal = { targetKpa: 120, toleranceKpa: 3, ceilingKpa: 132 };
const duties = [10, 20, 30, 36, 36, 38, 38, 38];
const pulls = scalePulls(
  duties.map((duty, index) => ({ duty, peakKpa: 70 + 1.3 * duty + (index % 3), secondsSincePrevious: 200 })),
  { goal, baseKpa: 65 },
);
const SCATTER = 0.014;

/** The covariance of the log peaks, written out: what all pulls share, what near ones share, heat soak and scatter. */
function covariance(falsePulls: ReadonlySet<number>): Matrix {
  const rows = duties.map((a, i) =>
    duties.map((b, j) => {
      const shared = departureCovariance([a, b], [pulls.heats[i] ?? NaN, pulls.heats[j] ?? NaN]);
      const own = i === j ? SCATTER ** 2 + (falsePulls.has(i) ? FALSE_STRAY ** 2 : 0) : 0;
      return shared + own;
    }),
  );
  return new Matrix(rows);
}

function logDeterminant(matrix: Matrix): number {
  const { lowerTriangularMatrix: factor } = new CholeskyDecomposition(matrix);
  return 2 * factor.diagonal().reduce((sum, entry) => sum + Math.log(entry), 0);
}

// Source: ml-matrix 6.15.1, inverse by LU and Cholesky factors of the same matrix.
describe('peakPrecision, against a library of linear algebra', () => {
  it.each([[[]], [[2]], [[0, 6]]])('inverts the covariance with the pulls %j false', (falsePulls) => {
    const known = new Set<number>(falsePulls);
    const ours = peakPrecision(departureModes(pulls, known), SCATTER);
    const theirs = inverse(covariance(known));
    const scale = Math.max(...ours.inverse);
    duties.forEach((_, i) =>
      duties.forEach((_other, j) =>
        expect(Math.abs((ours.inverse[i * ours.size + j] ?? NaN) - theirs.get(i, j)) / scale).toBeLessThan(
          1e-9,
        ),
      ),
    );
    expect(ours.logDeterminant).toBeCloseTo(logDeterminant(covariance(known)), 9);
  });
});

// Source: the same library, the likelihood of a normal with one variance made larger, written out.
describe('falsePullTerms, against a library of linear algebra', () => {
  it('gains and costs what the likelihood changes by when one pull is taken as false', () => {
    const plain = peakPrecision(departureModes(pulls, new Set()), SCATTER);
    const terms = falsePullTerms(plain, new Set());
    const misses = duties.map((_, index) => 0.02 * Math.sin(3 * index + 1));
    duties.forEach((_, pull) => {
      const without = logLikelihood(misses, covariance(new Set()));
      const withFalse = logLikelihood(misses, covariance(new Set([pull])));
      const coefficient = coefficientOf(plain, misses, pull);
      const widening = 1 + FALSE_STRAY ** 2 * (plain.inverse[pull * plain.size + pull] ?? NaN);
      const gain = (terms.gains[pull] ?? NaN) * coefficient ** 2 - 0.5 * Math.log(widening);
      expect(gain).toBeCloseTo(withFalse - without, 8);
    });
  });
});

function logLikelihood(misses: readonly number[], matrix: Matrix): number {
  const column = Matrix.columnVector([...misses]);
  const square = column.transpose().mmul(inverse(matrix)).mmul(column).get(0, 0);
  return -0.5 * (square + logDeterminant(matrix));
}

function coefficientOf({ inverse: precision, size }: PeakPrecision, misses: readonly number[], pull: number) {
  return misses.reduce((sum, miss, k) => sum + (precision[pull * size + k] ?? NaN) * miss, 0);
}
