import { NotANumberTextError } from '../errors.js';

const SEPARATORS = /[.,]/g;
const NUMBER = /^[+-]?(\d+([.,]\d*)?|[.,]\d+)$/;
const ALLOWED = 'to be digits with at most one decimal point or comma';

/**
 * The number that a person typed, with decimal point or decimal comma. Nothing is guessed: letters, units,
 * thousands separators and exponents are refused, and the message says which character is wrong and where.
 *
 * @param text what was typed; blanks around it and either kind of minus sign are fine
 * @param functionName public function on whose behalf it reads, for the message
 * @returns a finite number
 * @throws NotANumberTextError whose `allowed` says in plain words what is wrong
 * @example parseNumber('1,4') // 1.4
 */
export function parseNumber(text: string, functionName = 'parseNumber'): number {
  const trimmed = text.trim().replace(/^\u2212/, '-');
  const fault = findFault(trimmed);
  if (fault !== null) {
    throw new NotANumberTextError(functionName, { argument: 'text', value: `'${text}'`, allowed: fault });
  }
  return Number(trimmed.replace(',', '.'));
}

function findFault(trimmed: string): string | null {
  if (trimmed === '') return `${ALLOWED}: it is empty`;
  const stray = [...trimmed].findIndex((character, place) => !isExpected(character, place));
  if (stray >= 0) {
    return `${ALLOWED}: '${[...trimmed][stray]}' at place ${stray + 1} is not part of a number`;
  }
  if ((trimmed.match(SEPARATORS) ?? []).length > 1) {
    return `${ALLOWED}: it has more than one decimal point or comma`;
  }
  if (!NUMBER.test(trimmed)) return `${ALLOWED}: it has no digits`;
  return Number.isFinite(Number(trimmed.replace(',', '.'))) ? null : `${ALLOWED}: it is too large`;
}

function isExpected(character: string, place: number): boolean {
  return /[\d.,]/.test(character) || (place === 0 && /[+-]/.test(character));
}
