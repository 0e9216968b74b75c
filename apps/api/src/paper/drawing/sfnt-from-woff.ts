import { inflateSync } from 'node:zlib';

const SIGNATURE = 0x774f4646;
const WOFF_HEADER = 44;
const WOFF_ENTRY = 20;
const SFNT_HEADER = 12;
const SFNT_ENTRY = 16;

/**
 * Unpacks a WOFF font file into the plain font that it wraps (W3C, WOFF File Format 1.0, sections 3 to 5). The PDF
 * library could read WOFF too, but inflates it anew, in script, for every document.
 *
 * @throws TypeError for a file that is not WOFF 1
 */
export function sfntFromWoff(woff: Buffer): Buffer {
  if (woff.length < WOFF_HEADER || woff.readUInt32BE(0) !== SIGNATURE) {
    throw new TypeError('sfntFromWoff requires a WOFF 1 file');
  }
  const tableCount = woff.readUInt16BE(12);
  const tables = Array.from({ length: tableCount }, (_, index) => readTable(woff, index));
  const head = Buffer.alloc(SFNT_HEADER + tableCount * SFNT_ENTRY);
  const power = Math.floor(Math.log2(tableCount));
  head.writeUInt32BE(woff.readUInt32BE(4), 0);
  head.writeUInt16BE(tableCount, 4);
  head.writeUInt16BE(2 ** power * 16, 6);
  head.writeUInt16BE(power, 8);
  head.writeUInt16BE((tableCount - 2 ** power) * 16, 10);
  let offset = head.length;
  const bodies = tables.map((table, index) => {
    const at = SFNT_HEADER + index * SFNT_ENTRY;
    head.writeUInt32BE(table.tag, at);
    head.writeUInt32BE(table.checksum, at + 4);
    head.writeUInt32BE(offset, at + 8);
    head.writeUInt32BE(table.data.length, at + 12);
    const padded = Buffer.concat([table.data, Buffer.alloc(-table.data.length & 3)]);
    offset += padded.length;
    return padded;
  });
  return Buffer.concat([head, ...bodies]);
}

function readTable(woff: Buffer, index: number): { tag: number; checksum: number; data: Buffer } {
  const at = WOFF_HEADER + index * WOFF_ENTRY;
  const offset = woff.readUInt32BE(at + 4);
  const packedLength = woff.readUInt32BE(at + 8);
  const length = woff.readUInt32BE(at + 12);
  const packed = woff.subarray(offset, offset + packedLength);
  const data = packedLength < length ? inflateSync(packed) : packed;
  return { tag: woff.readUInt32BE(at), checksum: woff.readUInt32BE(at + 16), data };
}
