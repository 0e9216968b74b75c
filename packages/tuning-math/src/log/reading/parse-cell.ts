import { parseClock } from './parse-clock.js';

/** What a cell of a log holds: a number (with the unit that may be printed behind it), a time of day, or words. */
export interface ParsedCell {
  readonly kind: 'empty' | 'number' | 'clock' | 'switch' | 'words';
  /** NaN for `empty` and `words`. */
  readonly value: number;
  readonly unitText: string;
}

const NUMBER = /^([+-]?)((?:\d[\d.,' ]*|[.,]\d+)(?:e[+-]?\d+)?)\s*([^\d\s.,'+-][^\d]{0,11}|%)?$/i;
const GROUPED = { '.': /^\d{1,3}([,' ]\d{3})+(\.\d*)?$/, ',': /^\d{1,3}([.' ]\d{3})+(,\d*)?$/ };
const PLAIN = { '.': /^(\d+(\.\d*)?|\.\d+)(e[+-]?\d+)?$/i, ',': /^(\d+(,\d*)?|,\d+)(e[+-]?\d+)?$/i };
/** Far beyond any channel or date; what is larger would not fit the single precision that columns are kept in. */
const LARGEST = 1e30;
const NOTHING = /^(|-+|nan|n\/?a|null|none|#n\/a|inf|-inf|\?)$/i;
const SWITCHES: Readonly<Record<string, number>> = { on: 1, true: 1, yes: 1, off: 0, false: 0, no: 0 };

/**
 * Reads one cell the slow and thorough way: thousands separators, a unit behind the number, times of day,
 * switches. Words give NaN, never a guess.
 *
 * @param text cell without its quotes
 * @param decimalMark the file's decimal mark
 */
export function parseCell(text: string, decimalMark: '.' | ','): ParsedCell {
  const trimmed = text.trim();
  if (NOTHING.test(trimmed)) return { kind: 'empty', value: NaN, unitText: '' };
  const match = NUMBER.exec(trimmed);
  if (match !== null) {
    const [, sign = '', digits = '', unitText = ''] = match;
    const size = plainNumber(digits.trim(), decimalMark);
    if (size !== null) {
      return { kind: 'number', value: sign === '-' ? -size : size, unitText: unitText.trim() };
    }
  }
  const clock = parseClock(trimmed);
  if (clock !== null) return { kind: 'clock', value: clock, unitText: '' };
  const state = SWITCHES[trimmed.toLowerCase()];
  if (state !== undefined) return { kind: 'switch', value: state, unitText: '' };
  return { kind: 'words', value: NaN, unitText: '' };
}

function plainNumber(digits: string, decimalMark: '.' | ','): number | null {
  let plain = digits;
  if (GROUPED[decimalMark].test(digits))
    plain = digits.replace(decimalMark === '.' ? /[,' ]/g : /[.' ]/g, '');
  else if (!PLAIN[decimalMark].test(digits)) return null;
  const value = Number(decimalMark === ',' ? plain.replace(',', '.') : plain);
  return value < LARGEST ? value : null;
}
