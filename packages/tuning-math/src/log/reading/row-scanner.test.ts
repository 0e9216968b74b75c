import fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { RowScanner } from './row-scanner.js';

const encoder = new TextEncoder();

function scan(
  text: string,
  columnCount: number,
  chunkBytes = 1 << 20,
): { rows: number[][]; scanner: RowScanner } {
  const rows: number[][] = [];
  const layout = {
    delimiter: ',',
    decimalMarks: Array.from({ length: columnCount }, () => '.' as const),
    places: Int32Array.from({ length: columnCount }, (_, column) => column),
    placeCount: columnCount,
    skipLineCount: 0,
    lineEnd: 10,
  };
  const scanner = new RowScanner(layout, (values) => rows.push([...values]));
  const bytes = encoder.encode(text);
  for (let start = 0; start < bytes.length; start += chunkBytes)
    scanner.push(bytes.slice(start, start + chunkBytes));
  scanner.finish();
  return { rows, scanner };
}

const decimal = fc
  .tuple(fc.integer({ min: -999_999_999, max: 999_999_999 }), fc.integer({ min: 0, max: 9 }))
  .map(([mantissa, places]) => (mantissa / 10 ** places).toFixed(places));

describe('RowScanner', () => {
  it('reads decimals to the last bit as Number does', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(decimal, decimal), { minLength: 1, maxLength: 30 }), (cells) => {
        const text = cells.map((row) => row.join(',')).join('\n');
        expect(scan(text, 2).rows).toEqual(cells.map((row) => row.map(Number)));
      }),
    );
  });

  it('gives the same rows however the bytes are cut', () => {
    const text = '1,2\r\n"3",4.5\r\n"6,7",8\r\n9,\n10,"a\nb"\n11,12';
    const whole = scan(text, 2).rows;
    for (let chunkBytes = 1; chunkBytes < 20; chunkBytes += 1)
      expect(scan(text, 2, chunkBytes).rows).toEqual(whole);
  });

  it('agrees with papaparse on quoted files, cell for cell', () => {
    const cell = fc.oneof(
      decimal,
      decimal.map((text) => `"${text}"`),
      fc.constant(''),
    );
    fc.assert(
      fc.property(fc.array(fc.tuple(decimal, cell, cell), { minLength: 1, maxLength: 20 }), (cells) => {
        const text = cells.map((row) => row.join(',')).join('\r\n');
        const parsed = Papa.parse<string[]>(text, { delimiter: ',' }).data;
        const expected = parsed.map((row) => row.map((value) => (value === '' ? NaN : Number(value))));
        expect(scan(text, 3).rows).toEqual(expected);
      }),
    );
  });

  it('passes over rows of words and counts them, short and long rows too', () => {
    const { rows, scanner } = scan('1,2\nTime,Boost\n3\n4,5,6\n,\n', 2);
    expect(rows).toEqual([
      [1, 2],
      [3, NaN],
      [4, 5],
    ]);
    expect(scanner.counts).toEqual({ rows: 3, wordRows: 1, shortRows: 1, longRows: 1 });
  });

  it('reads on after a quotation mark that never closes', () => {
    const rest = Array.from({ length: 2000 }, (_, row) => `${row},${row}`).join('\n');
    expect(scan(`1,2\n"3,4\n${rest}`, 2).rows.length).toBeGreaterThanOrEqual(2001);
  });

  it('takes numbers of more digits than a double holds the slow way, without loss of size', () => {
    expect(scan('12345678901234567890,0.1234567890123456789\n', 2).rows).toEqual([
      [12345678901234567890, 0.1234567890123456789],
    ]);
  });

  it('reads nothing from an unended line of more than a megabyte but says so', () => {
    expect(() => scan('1'.repeat((1 << 20) + 10), 1)).toThrow('more than a million characters');
  });
});
