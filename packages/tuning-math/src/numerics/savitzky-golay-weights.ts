import { Matrix, QrDecomposition } from 'ml-matrix';
import { requireNumber } from '../require-number.js';

/** Which smoothing or differentiating weights are wanted. */
export interface SavitzkyGolayOptions {
  /** Odd number of samples in the window, 3 to 201. */
  readonly windowLength: number;
  /** Degree of the fitted polynomial, 0 to 10, below the window length. */
  readonly degree: number;
  /** 0 smooths, 1 gives the slope, and so on, up to the degree; default 0. */
  readonly derivative?: number;
  /** Sample of the window that the result belongs to, 0 for the first; default the centre. */
  readonly position?: number;
}

/**
 * Weights whose dot product with a window of evenly spaced samples, in time order, is the value (or
 * derivative) of the least-squares polynomial at one of them. A derivative is per sample step: divide by
 * the step to the power of the derivative.
 *
 * @returns `windowLength` weights in time order (a convolution would need them reversed)
 * @throws NotFiniteError, OutOfRangeError
 * Source: Savitzky & Golay, Anal. Chem. 36 (1964) 1627-1639, by a QR least-squares fit instead of tables.
 * @example savitzkyGolayWeights({ windowLength: 5, degree: 2 }) // [-3, 12, 17, 12, -3] / 35
 */
export function savitzkyGolayWeights(options: SavitzkyGolayOptions): number[] {
  const { windowLength, degree, derivative = 0 } = options;
  const name = 'savitzkyGolayWeights';
  requireNumber(name, 'windowLength', windowLength, { min: 3, max: 201, integer: true });
  requireNumber(name, '(windowLength - 1) / 2', (windowLength - 1) / 2, { integer: true });
  requireNumber(name, 'degree', degree, { min: 0, max: Math.min(10, windowLength - 1), integer: true });
  requireNumber(name, 'derivative', derivative, { min: 0, max: degree, integer: true });
  const position = options.position ?? (windowLength - 1) / 2;
  requireNumber(name, 'position', position, { min: 0, max: windowLength - 1, integer: true });
  // Offsets scaled to at most 1 keep the powers within one size, so high degrees stay well conditioned.
  const scale = (windowLength - 1) / 2;
  const design = Matrix.zeros(windowLength, degree + 1);
  for (let row = 0; row < windowLength; row += 1) {
    for (let power = 0; power <= degree; power += 1) {
      design.set(row, power, ((row - scale) / scale) ** power);
    }
  }
  const qr = new QrDecomposition(design);
  const target = derivativeRow((position - scale) / scale, degree, derivative);
  // weights = Q · R⁻ᵀ · target, so that no normal equations are formed.
  const solved = forwardSubstitute(qr.upperTriangularMatrix, target);
  const weights = qr.orthogonalMatrix.mmul(Matrix.columnVector(solved)).to1DArray();
  return weights.map((weight) => weight / scale ** derivative);
}

/** The derivative of each power of t at t. */
function derivativeRow(t: number, degree: number, derivative: number): number[] {
  return Array.from({ length: degree + 1 }, (_, power) => {
    if (power < derivative) return 0;
    let factor = 1;
    for (let step = 0; step < derivative; step += 1) factor *= power - step;
    return factor * t ** (power - derivative);
  });
}

function forwardSubstitute(upper: Matrix, target: readonly number[]): number[] {
  const solution: number[] = [];
  target.forEach((value, row) => {
    let rest = value;
    for (let column = 0; column < row; column += 1) rest -= upper.get(column, row) * (solution[column] ?? 0);
    solution.push(rest / upper.get(row, row));
  });
  return solution;
}
