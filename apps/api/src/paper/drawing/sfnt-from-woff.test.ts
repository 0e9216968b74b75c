import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { describe, expect, it } from 'vitest';
import { sfntFromWoff } from './sfnt-from-woff.js';

const file = createRequire(import.meta.url).resolve(
  '@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-400-normal.woff',
);

/** OpenType 1.9, 'Calculating checksums': the sum of a table's big-endian words, modulo 2^32. */
function checksum(table: Buffer): number {
  let sum = 0;
  for (let at = 0; at < table.length; at += 4) sum = (sum + table.readUInt32BE(at)) >>> 0;
  return sum;
}

describe('sfntFromWoff(woff)', () => {
  it('gives tables whose content has the check sums that the font itself states', () => {
    const font = sfntFromWoff(readFileSync(file));
    const tableCount = font.readUInt16BE(4);
    expect(tableCount).toBeGreaterThan(8);
    for (let index = 0; index < tableCount; index += 1) {
      const at = 12 + index * 16;
      const tag = font.toString('latin1', at, at + 4);
      const [offset, length] = [font.readUInt32BE(at + 8), font.readUInt32BE(at + 12)];
      const table = Buffer.from(font.subarray(offset, offset + ((length + 3) & ~3)));
      // The head table's own check sum leaves out its adjustment field.
      if (tag === 'head') table.writeUInt32BE(0, 8);
      expect([tag, checksum(table)]).toEqual([tag, font.readUInt32BE(at + 4)]);
    }
  });

  it('throws TypeError for anything else', () => {
    expect(() => sfntFromWoff(Buffer.from('not a font'))).toThrow(TypeError);
    expect(() => sfntFromWoff(Buffer.alloc(100))).toThrow(TypeError);
  });
});
