import { NotFiniteError, OutOfRangeError } from './errors.js';

/** Where an argument may lie; both ends belong to the range unless `exclusive`. */
export interface NumberRange {
  readonly min?: number;
  readonly max?: number;
  readonly exclusive?: boolean;
  readonly integer?: boolean;
}

/**
 * The value itself, once it is known to be finite and inside its range. The guard at the head of the
 * public functions, so that every one of them refuses bad input in the same words.
 *
 * @param functionName the public function on whose behalf it checks
 * @param argument name of the argument, as the caller knows it
 * @throws NotFiniteError for NaN, infinity or what is no number; OutOfRangeError outside the range
 */
export function requireNumber(
  functionName: string,
  argument: string,
  value: number,
  range: NumberRange = {},
): number {
  if (typeof value !== 'number' || !Number.isFinite(value)) {
    throw new NotFiniteError(functionName, { argument, value, allowed: allowedWords(range) });
  }
  if (!isInside(value, range)) {
    throw new OutOfRangeError(functionName, { argument, value, allowed: allowedWords(range) });
  }
  return value;
}

function isInside(value: number, range: NumberRange): boolean {
  const { min = -Infinity, max = Infinity, exclusive = false, integer = false } = range;
  if (integer && !Number.isInteger(value)) return false;
  return exclusive ? value > min && value < max : value >= min && value <= max;
}

function allowedWords({ min, max, exclusive = false, integer = false }: NumberRange): string {
  const kind = integer ? 'to be a whole number' : 'to be a finite number';
  const lower = min === undefined ? '' : exclusive ? ` above ${min}` : ` from ${min}`;
  const upper = max === undefined ? '' : exclusive ? ` below ${max}` : ` up to ${max}`;
  return kind + lower + upper;
}
