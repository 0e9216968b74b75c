import { drawBetween, drawOne, type Random } from '@pullbook/practice-car';

type Mutation = (bytes: Uint8Array, random: Random) => Uint8Array;

const whole = (random: Random, end: number): number => Math.floor(drawBetween(random, 0, Math.max(1, end)));
const NASTY = [0, 9, 10, 13, 32, 34, 44, 45, 46, 48, 58, 59, 61, 69, 78, 101, 124, 127, 128, 195, 255];
const MARKS = [
  '"',
  ',',
  ';',
  '\t',
  '\r',
  '\n',
  '-',
  '.',
  '1e999',
  'NaN',
  '""',
  '\u0000',
  '999999999999999999999',
  '12:00:00',
];

function splice(bytes: Uint8Array, start: number, end: number, piece: Uint8Array): Uint8Array {
  const result = new Uint8Array(bytes.length - (end - start) + piece.length);
  result.set(bytes.subarray(0, start));
  result.set(piece, start);
  result.set(bytes.subarray(end), start + piece.length);
  return result;
}

const MUTATIONS: readonly Mutation[] = [
  (bytes, random) => bytes.map((byte) => (random() < 0.001 ? drawOne(random, NASTY) : byte)),
  (bytes, random) => bytes.subarray(0, whole(random, bytes.length)),
  (bytes, random) => bytes.subarray(whole(random, bytes.length / 4)),
  (bytes, random) => {
    const start = whole(random, bytes.length);
    return splice(bytes, start, Math.min(bytes.length, start + whole(random, 200)), new Uint8Array(0));
  },
  (bytes, random) => {
    const start = whole(random, bytes.length);
    const piece = bytes.slice(start, start + whole(random, 400));
    const at = whole(random, bytes.length);
    return splice(bytes, at, at, piece);
  },
  (bytes, random) => {
    const at = whole(random, bytes.length);
    return splice(bytes, at, at, new TextEncoder().encode(drawOne(random, MARKS)));
  },
  (bytes, random) => {
    const [from, to] = [drawOne(random, NASTY), drawOne(random, NASTY)];
    return bytes.map((byte) => (byte === from ? to : byte));
  },
  (bytes, random) => {
    const at = whole(random, Math.min(200, bytes.length));
    return splice(bytes, at, Math.min(bytes.length, at + 1), Uint8Array.of(drawOne(random, NASTY)));
  },
];

/** A file with one to three things wrong with it; the same randomness gives the same file. */
export function mutateFile(bytes: Uint8Array, random: Random): Uint8Array {
  let mutated = bytes;
  for (let left = 1 + whole(random, 3); left > 0; left -= 1)
    mutated = drawOne(random, MUTATIONS)(mutated, random);
  return mutated;
}
