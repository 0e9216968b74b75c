import { coefficientRoom } from './coefficient-room.js';
import { inverse, Matrix } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { departureModes } from './departure-modes.js';
import { missCoefficients } from './miss-coefficients.js';
import { departureCovariance } from './peak-covariance.js';
import { peakPrecision } from './peak-precision.js';
import { projectMisses } from './project-misses.js';
import { FALSE_STRAY } from './response-settings.js';
import { scalePulls } from './scaled-pulls.js';

const goal = { targetKpa: 120, toleranceKpa: 3, ceilingKpa: 132 };
const duties = [10, 20, 30, 36, 36, 38, 38, 38, 37.5, 38];
const pulls = scalePulls(
  duties.map((duty, index) => ({ duty, peakKpa: 70 + duty + (index % 3), secondsSincePrevious: 300 })),
  { goal, baseKpa: 65 },
);
const SCATTER = 0.018;
const CURVES = 3;

function covariance(falsePulls: ReadonlySet<number>): Matrix {
  const rows = duties.map((a, i) =>
    duties.map((b, j) => {
      const shared = departureCovariance([a, b], [pulls.heats[i] ?? NaN, pulls.heats[j] ?? NaN]);
      return shared + (i === j ? SCATTER ** 2 + (falsePulls.has(i) ? FALSE_STRAY ** 2 : 0) : 0);
    }),
  );
  return new Matrix(rows);
}

// Source: ml-matrix 6.15.1, the inverse of the covariance written out, times the misses.
describe('missCoefficients, against a library of linear algebra', () => {
  it.each([[[]], [[6]], [[0, 7]]])(
    'weighs the misses of each curve with the pulls %j false',
    (falsePulls) => {
      const known = new Set<number>(falsePulls);
      const misses = Float64Array.from(
        { length: CURVES * duties.length },
        (_, at) => 0.03 * Math.sin(5 * at),
      );
      const modes = departureModes(pulls, known);
      const projected = projectMisses(misses, CURVES, modes);
      const room = coefficientRoom(modes);
      for (let curve = 0; curve < CURVES; curve += 1) {
        missCoefficients(projected, peakPrecision(modes, SCATTER), curve, room);
        const column = Matrix.columnVector([
          ...misses.slice(curve * duties.length, (curve + 1) * duties.length),
        ]);
        const theirs = inverse(covariance(known)).mmul(column).to1DArray();
        room.coefficients.forEach((coefficient, pull) =>
          expect(coefficient).toBeCloseTo(theirs[pull] ?? NaN, 6),
        );
      }
    },
  );

  it('needs no more modes than there are duties, and one for heat', () => {
    expect(departureModes(pulls, new Set()).count).toBeLessThanOrEqual(new Set(duties).size + 1);
  });
});
