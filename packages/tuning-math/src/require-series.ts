import {
  LengthMismatchError,
  NotFiniteError,
  NotStrictlyIncreasingError,
  TooFewPointsError,
} from './errors.js';

/**
 * The series itself, once it is known to be long enough and finite throughout. Missing values are not
 * repaired: whoever has them drops them by an explicit step first.
 *
 * @throws TooFewPointsError for fewer than `atLeast` values; NotFiniteError naming the first bad one
 */
export function requireSeries(
  functionName: string,
  argument: string,
  values: ArrayLike<number>,
  atLeast = 1,
): ArrayLike<number> {
  if (values.length < atLeast) {
    const allowed = `to have at least ${atLeast} value${atLeast === 1 ? '' : 's'}`;
    throw new TooFewPointsError(functionName, { argument, value: `${values.length} of them`, allowed });
  }
  for (let index = 0; index < values.length; index += 1) {
    const value = values[index];
    if (typeof value !== 'number' || !Number.isFinite(value)) {
      const allowed = 'to be a finite number';
      throw new NotFiniteError(functionName, { argument: `${argument}[${index}]`, value, allowed });
    }
  }
  return values;
}

/** Refuses two series of unlike length by the name of the second. @throws LengthMismatchError */
export function requireSameLength(
  functionName: string,
  argument: string,
  values: ArrayLike<number>,
  length: number,
): void {
  if (values.length === length) return;
  const allowed = `to have ${length} values like its partner`;
  throw new LengthMismatchError(functionName, { argument, value: `${values.length} of them`, allowed });
}

/** Refuses a series that does not rise at every step. @throws NotStrictlyIncreasingError */
export function requireStrictlyIncreasing(
  functionName: string,
  argument: string,
  values: ArrayLike<number>,
): void {
  for (let index = 1; index < values.length; index += 1) {
    const before = values[index - 1] ?? NaN;
    const value = values[index] ?? NaN;
    if (value > before) continue;
    const allowed = `to lie above the value before it, ${before}`;
    throw new NotStrictlyIncreasingError(functionName, { argument: `${argument}[${index}]`, value, allowed });
  }
}
