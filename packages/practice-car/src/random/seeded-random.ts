import { NotFiniteError } from '@pullbook/tuning-math';

/** A stream of numbers, each at least 0 and below 1, like the language's own but repeatable. */
export type Random = () => number;

/** Four 32-bit words, not all zero: the state of xoshiro128**. */
export type XoshiroState = readonly [number, number, number, number];

const WORD = 2 ** 32;
const rotateLeft = (word: number, bits: number): number => (word << bits) | (word >>> (32 - bits));

/**
 * The generator xoshiro128** as a function that yields unsigned 32-bit integers.
 *
 * @param state four 32-bit words, not all zero; copied, never changed
 * @returns a function; each call yields the next integer, 0 to 2^32 - 1
 * Source: Blackman and Vigna, "Scrambled linear pseudorandom number generators", ACM TOMS 47 (2021), 36.
 */
export function xoshiro128(state: XoshiroState): () => number {
  let [a, b, c, d] = state;
  return () => {
    const result = Math.imul(rotateLeft(Math.imul(b, 5), 7), 9) >>> 0;
    const shifted = b << 9;
    c ^= a;
    d ^= b;
    b ^= c;
    a ^= d;
    c ^= shifted;
    d = rotateLeft(d, 11);
    return result;
  };
}

/** Murmur3's 32-bit finaliser over a Weyl sequence: spreads near seeds far apart. Source: Appleby, MurmurHash3. */
function spreadSeed(seed: number): XoshiroState {
  let weyl = (Math.trunc(seed) % WORD) ^ Math.trunc(seed / WORD);
  const word = (): number => {
    weyl = (weyl + 0x9e3779b9) | 0;
    let mixed = weyl;
    mixed = Math.imul(mixed ^ (mixed >>> 16), 0x85ebca6b);
    mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae35);
    return (mixed ^ (mixed >>> 16)) >>> 0;
  };
  return [word(), word(), word(), word() | 1];
}

/**
 * A seeded stream of numbers in [0, 1): the same seed gives the same stream, bit for bit, everywhere.
 *
 * @param seed any finite number; its integer part counts
 * @returns the stream; each number has 53 random bits
 * @throws NotFiniteError for a seed that is NaN or infinite
 * Source: xoshiro128** (see `xoshiro128`), seeded through a mixing function as its authors advise.
 * @example seededRandom(7)() === seededRandom(7)() // true
 */
export function seededRandom(seed: number): Random {
  if (!Number.isFinite(seed))
    throw new NotFiniteError('seededRandom', {
      argument: 'seed',
      value: seed,
      allowed: 'to be a finite number',
    });
  const next = xoshiro128(spreadSeed(seed));
  return () => ((next() >>> 5) * 67108864 + (next() >>> 6)) / 9007199254740992;
}
