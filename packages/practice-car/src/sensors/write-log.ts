import type { LogStyle, StyleColumn, TimeForm } from './log-style.js';

/** One column of samples, in the channel's base unit. */
export interface LogColumn {
  readonly style: StyleColumn;
  readonly values: Float64Array;
}

/** A log starts its clock here: a quarter past ten. */
const CLOCK_START_S = 10 * 3600 + 15 * 60;

function headerCell(name: string, spelling: string, place: LogStyle['unitPlace']): string {
  if (spelling === '' || place === 'row' || place === 'none') return name;
  if (place === 'bracket') return `${name} [${spelling}]`;
  if (place === 'paren') return `${name} (${spelling})`;
  return `${name} ${spelling}`;
}

const TIME_UNITS: Record<TimeForm, string> = { seconds: 's', milliseconds: 'ms', clock: '', absent: '' };

function clock(timeS: number): string {
  const total = Math.round((CLOCK_START_S + timeS) * 1000);
  const part = (divisor: number, modulus: number, width: number): string =>
    String(Math.floor(total / divisor) % modulus).padStart(width, '0');
  return `${part(3_600_000, 24, 2)}:${part(60_000, 60, 2)}:${part(1000, 60, 2)}.${part(1, 1000, 3)}`;
}

function timeCell(timeS: number, form: TimeForm): string {
  if (form === 'clock') return clock(timeS);
  return form === 'milliseconds' ? (timeS * 1000).toFixed(1) : timeS.toFixed(4);
}

/**
 * A log as text, written as its style says.
 *
 * @param style separators, marks, header form, time form
 * @param rowTimesS moments of the rows
 * @param columns samples, one for each row
 * @returns the file's text; O(cells)
 */
export function writeLog(style: LogStyle, rowTimesS: Float64Array, columns: readonly LogColumn[]): string {
  const hasTime = style.time.form !== 'absent';
  const cell = (text: string): string => {
    const marked = style.decimalMark === ',' ? text.replace('.', ',') : text;
    return style.isQuoted ? `"${marked}"` : marked;
  };
  const line = (cells: readonly string[]): string => cells.join(style.delimiter);
  const timeUnit = TIME_UNITS[style.time.form];
  const names = columns.map(({ style: { name, unit } }) => headerCell(name, unit.spelling, style.unitPlace));
  const units = columns.map(({ style: { unit } }) => unit.spelling);
  const quote = (text: string): string => (style.isQuoted ? `"${text}"` : text);
  const lines = [...style.preamble];
  const timeName = headerCell(style.time.name, timeUnit, style.unitPlace);
  lines.push(line((hasTime ? [timeName, ...names] : names).map(quote)));
  if (style.unitPlace === 'row') lines.push(line((hasTime ? [timeUnit, ...units] : units).map(quote)));
  rowTimesS.forEach((timeS, row) => {
    const cells = columns.map(({ style: { unit }, values }) =>
      cell(((values[row] ?? 0) * unit.scale + unit.offset).toFixed(unit.decimals)),
    );
    if (hasTime) cells.unshift(cell(timeCell(timeS, style.time.form)));
    lines.push(line(cells));
  });
  return (style.hasByteOrderMark ? '\uFEFF' : '') + lines.join(style.lineEnd) + style.lineEnd;
}
