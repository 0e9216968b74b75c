import {
  FALSE_STRAY,
  LEVEL_DEPARTURE,
  LOCAL_DEPARTURE,
  LOCAL_LENGTH,
  SOAK_SHIFT,
} from './response-settings.js';
import type { ScaledPulls } from './scaled-pulls.js';

/** Covariance of two log peaks of one car around a tabulated curve, without the pull-to-pull scatter. */
export function departureCovariance(
  duties: readonly [number, number],
  heats: readonly [number, number],
): number {
  const apart = (duties[0] - duties[1]) / LOCAL_LENGTH;
  return (
    LEVEL_DEPARTURE * LEVEL_DEPARTURE +
    LOCAL_DEPARTURE * LOCAL_DEPARTURE * Math.exp(-0.5 * apart * apart) +
    SOAK_SHIFT * SOAK_SHIFT * heats[0] * heats[1]
  );
}

/** Inverse covariance of the log peaks at one pull-to-pull scatter. */
export interface PeakPrecision {
  readonly size: number;
  /** `size` by `size`, row by row. */
  readonly inverse: Float64Array;
  readonly logDeterminant: number;
}

/**
 * Inverse and log determinant of the pulls' covariance by Cholesky factors. A pull known to be false carries
 * the stray of false readings besides the scatter.
 */
export function peakPrecision(
  pulls: ScaledPulls,
  scatter: number,
  falsePulls: ReadonlySet<number>,
): PeakPrecision {
  const size = pulls.count;
  const factor = new Float64Array(size * size);
  for (let i = 0; i < size; i += 1) {
    for (let j = 0; j <= i; j += 1) {
      factor[i * size + j] = departureCovariance(
        [pulls.duties[i] as number, pulls.duties[j] as number],
        [pulls.heats[i] as number, pulls.heats[j] as number],
      );
    }
    factor[i * size + i] =
      (factor[i * size + i] as number) +
      scatter * scatter +
      (falsePulls.has(i) ? FALSE_STRAY * FALSE_STRAY : 0);
  }
  const logDeterminant = factorInPlace(factor, size);
  return { size, inverse: inverseFromFactor(factor, size), logDeterminant };
}

function factorInPlace(matrix: Float64Array, size: number): number {
  let logDeterminant = 0;
  for (let i = 0; i < size; i += 1) {
    for (let j = 0; j <= i; j += 1) {
      let rest = matrix[i * size + j] as number;
      for (let k = 0; k < j; k += 1) {
        rest -= (matrix[i * size + k] as number) * (matrix[j * size + k] as number);
      }
      matrix[i * size + j] = i === j ? Math.sqrt(rest) : rest / (matrix[j * size + j] as number);
    }
    logDeterminant += 2 * Math.log(matrix[i * size + i] as number);
  }
  return logDeterminant;
}

function inverseFromFactor(factor: Float64Array, size: number): Float64Array {
  const inverse = new Float64Array(size * size);
  for (let unit = 0; unit < size; unit += 1) {
    const column = inverse.subarray(unit * size, (unit + 1) * size);
    column[unit] = 1;
    solveForward(factor, column, unit);
    solveBackward(factor, column);
  }
  return inverse;
}

/** Solves factor · x = column in place; entries before `from` are zero. */
function solveForward(factor: Float64Array, column: Float64Array, from: number): void {
  const size = column.length;
  for (let i = from; i < size; i += 1) {
    let rest = column[i] as number;
    for (let k = from; k < i; k += 1) rest -= (factor[i * size + k] as number) * (column[k] as number);
    column[i] = rest / (factor[i * size + i] as number);
  }
}

/** Solves factor' · x = column in place. */
function solveBackward(factor: Float64Array, column: Float64Array): void {
  const size = column.length;
  for (let i = size - 1; i >= 0; i -= 1) {
    let rest = column[i] as number;
    for (let k = i + 1; k < size; k += 1) rest -= (factor[k * size + i] as number) * (column[k] as number);
    column[i] = rest / (factor[i * size + i] as number);
  }
}
