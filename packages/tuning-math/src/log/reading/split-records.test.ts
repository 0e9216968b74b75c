import { describe, expect, it } from 'vitest';
import { splitRecords } from './split-records.js';

const cellsOf = (text: string): (readonly string[])[] =>
  splitRecords(text, ',', 100).map(({ cells }) => cells);

describe('splitRecords, RFC 4180 section 2', () => {
  it('reads a doubled quote inside a quoted cell as one', () => {
    expect(cellsOf('"aaa","b""bb","ccc"')).toEqual([['aaa', 'b"bb', 'ccc']]);
  });

  it('keeps a line break inside a quoted cell in one record and counts its lines', () => {
    expect(splitRecords('"a\r\nb",c\r\nd', ',', 9)).toEqual([
      { cells: ['a\r\nb', 'c'], line: 0, lineCount: 2 },
      { cells: ['d'], line: 2, lineCount: 1 },
    ]);
  });

  it('reads "a,b," as three cells', () => {
    expect(cellsOf('a,b,')).toEqual([['a', 'b', '']]);
  });

  it('takes the last record with or without a line end', () => {
    expect(cellsOf('a\r\nb')).toEqual(cellsOf('a\r\nb\r\n'));
  });

  it('ends an unclosed quote with the text', () => {
    expect(cellsOf('a,"b\nc')).toEqual([['a', 'b\nc']]);
  });
});
