import { inverse, Matrix, QrDecomposition } from 'ml-matrix';
import { OutOfRangeError, TooFewPointsError } from '../errors.js';
import { requireSameLength, requireSeries } from '../require-series.js';

/** A linear least-squares fit with what is needed to judge it. */
export interface LeastSquaresFit {
  readonly coefficients: readonly number[];
  /** Standard error of each coefficient; empty where no degree of freedom is left. */
  readonly standardErrors: readonly number[];
  readonly residuals: readonly number[];
  readonly residualSumOfSquares: number;
  readonly degreesOfFreedom: number;
  /** Square root of residual sum of squares over degrees of freedom; null without any. */
  readonly residualSd: number | null;
}

/**
 * Coefficients b that bring design · b closest to the observations, by Householder QR.
 *
 * @param design n rows of p finite columns each (a column of ones for an intercept), n >= p >= 1
 * @param observations n finite values
 * @returns coefficients with standard errors and residuals
 * @throws TooFewPointsError for n < p or no row; NotFiniteError; LengthMismatchError; OutOfRangeError where
 *   the columns depend on one another, so that the coefficients are not determined
 * Cost: O(n p²).
 * Source: Golub & Van Loan, Matrix Computations, section 5.3 (QR, no normal equations).
 * @example leastSquares([[1, 0], [1, 1], [1, 2]], [1, 3, 5]).coefficients // [1, 2]
 */
export function leastSquares(
  design: readonly ArrayLike<number>[],
  observations: ArrayLike<number>,
): LeastSquaresFit {
  const columns = checkDesign(design, observations);
  const scaled = scaleColumns(design, columns);
  const qr = new QrDecomposition(scaled.matrix);
  checkRank(qr, columns);
  const y = Matrix.columnVector(Array.from(observations));
  const coefficients = qr
    .solve(y)
    .to1DArray()
    .map((value, index) => value / (scaled.scales[index] ?? 1));
  const residuals = Array.from(observations, (value, row) => value - dot(design[row] ?? [], coefficients));
  const residualSumOfSquares = residuals.reduce((sum, value) => sum + value * value, 0);
  const degreesOfFreedom = design.length - columns;
  if (degreesOfFreedom === 0) {
    return {
      coefficients,
      standardErrors: [],
      residuals,
      residualSumOfSquares,
      degreesOfFreedom,
      residualSd: null,
    };
  }
  const residualSd = Math.sqrt(residualSumOfSquares / degreesOfFreedom);
  const inverseUpper = inverse(qr.upperTriangularMatrix);
  const standardErrors = coefficients.map(
    (_, index) => (residualSd * Math.hypot(...inverseUpper.getRow(index))) / (scaled.scales[index] ?? 1),
  );
  return { coefficients, standardErrors, residuals, residualSumOfSquares, degreesOfFreedom, residualSd };
}

function checkDesign(design: readonly ArrayLike<number>[], observations: ArrayLike<number>): number {
  const columns = design[0]?.length ?? 0;
  if (columns === 0 || design.length < columns) {
    const allowed = 'to have at least as many rows as columns and at least one of each';
    const value = `${design.length} rows of ${columns}`;
    throw new TooFewPointsError('leastSquares', { argument: 'design', value, allowed });
  }
  requireSameLength('leastSquares', 'observations', observations, design.length);
  requireSeries('leastSquares', 'observations', observations);
  design.forEach((row, index) => {
    requireSameLength('leastSquares', `design[${index}]`, row, columns);
    requireSeries('leastSquares', `design[${index}]`, row);
  });
  return columns;
}

/** Columns brought to length 1, so that the rank test does not depend on anyone's units. */
function scaleColumns(
  design: readonly ArrayLike<number>[],
  columns: number,
): { matrix: Matrix; scales: number[] } {
  const scales = Array.from({ length: columns }, (_, column) => {
    const length = Math.hypot(...design.map((row) => row[column] ?? 0));
    return length === 0 ? 1 : length;
  });
  const matrix = new Matrix(
    design.map((row) => Array.from(row, (value, column) => value / (scales[column] ?? 1))),
  );
  return { matrix, scales };
}

function checkRank(qr: QrDecomposition, columns: number): void {
  const upper = qr.upperTriangularMatrix;
  for (let index = 0; index < columns; index += 1) {
    if (Math.abs(upper.get(index, index)) > columns * 16 * Number.EPSILON) continue;
    const allowed = 'to be independent of the columns before it';
    throw new OutOfRangeError('leastSquares', {
      argument: `column ${index} of design`,
      value: 'dependent',
      allowed,
    });
  }
}

function dot(row: ArrayLike<number>, coefficients: readonly number[]): number {
  return coefficients.reduce((sum, coefficient, index) => sum + coefficient * (row[index] ?? 0), 0);
}
