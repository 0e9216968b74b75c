import { describe, expect, it } from 'vitest';
import { parseCell } from './parse-cell.js';
import { parseClock } from './parse-clock.js';

describe('parseCell', () => {
  it.each([
    ['12.5', '.', 'number', 12.5],
    [' -3 ', '.', 'number', -3],
    ['12,5', ',', 'number', 12.5],
    ['1.013,25', ',', 'number', 1013.25],
    ['6,500', '.', 'number', 6500],
    ['6 500', '.', 'number', 6500],
    ['1.5e3', '.', 'number', 1500],
    ['on', '.', 'switch', 1],
    ['12:00:01.5', '.', 'clock', 43201.5],
  ] as const)('reads %j with decimal mark %j as %s %d', (text, mark, kind, value) => {
    expect(parseCell(text, mark)).toMatchObject({ kind, value });
  });

  it.each(['', '-', '---', 'NaN', 'n/a', 'null'])('takes %j as no sample', (text) => {
    expect(parseCell(text, '.')).toMatchObject({ kind: 'empty', value: NaN });
  });

  it.each(['12,5', 'Boost', '1.2.3', '12..5', '=1+1', '0x1F'])(
    'never guesses at %j in a file with points',
    (text) => {
      expect(parseCell(text, '.')).toMatchObject({ kind: 'words', value: NaN });
    },
  );

  it('tells the unit behind a number', () => {
    expect(parseCell('14.7 psi', '.')).toEqual({ kind: 'number', value: 14.7, unitText: 'psi' });
    expect(parseCell('45%', '.')).toEqual({ kind: 'number', value: 45, unitText: '%' });
  });
});

describe('parseClock', () => {
  it.each([
    ['01:02:03', 3723],
    ['01:02:03,5', 3723.5],
    ['9:03:09.25 PM', 75789.25],
    ['12:00:00 AM', 0],
    ['3:09.250', 189.25],
    ['2026-11-25T14:00:00.5Z', 50400.5],
    ['25.11.2026 14:00:00', 50400],
  ])('reads %j as %d s', (text, seconds) => {
    expect(parseClock(text)).toBe(seconds);
  });

  it.each(['12:75:00', '1:2', 'noon', '12:00:99', ''])('takes %j for no clock', (text) => {
    expect(parseClock(text)).toBeNull();
  });
});
