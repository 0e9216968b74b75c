import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { sealContent, sealHolds } from './seal.js';

/** RFC 8785 section 3.2.2: the sample input as JSON text. */
const rfcSample = String.raw`{
  "numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],
  "string": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/",
  "literals": [null, true, false]
}`;

/** RFC 8785 section 3.2.4: the canonical form of that sample as UTF-8 bytes. */
const rfcBytes = `
7b 22 6c 69 74 65 72 61 6c 73 22 3a 5b 6e 75 6c 6c 2c 74 72
75 65 2c 66 61 6c 73 65 5d 2c 22 6e 75 6d 62 65 72 73 22 3a
5b 33 33 33 33 33 33 33 33 33 2e 33 33 33 33 33 33 33 2c 31
65 2b 33 30 2c 34 2e 35 2c 30 2e 30 30 32 2c 31 65 2d 32 37
5d 2c 22 73 74 72 69 6e 67 22 3a 22 e2 82 ac 24 5c 75 30 30
30 66 5c 6e 41 27 42 5c 22 5c 5c 5c 5c 5c 22 2f 22 7d`;

/** RFC 8785 section 3.2.3: the sample for the order of members (UTF-16 code units). */
const rfcSortSample = String.raw`{
  "\u20ac": "Euro Sign",
  "\r": "Carriage Return",
  "\ufb33": "Hebrew Letter Dalet With Dagesh",
  "1": "One",
  "\ud83d\ude00": "Emoji: Grinning Face",
  "\u0080": "Control",
  "\u00f6": "Latin Small Letter O With Diaeresis"
}`;
const rfcSorted = [
  'Carriage Return',
  'One',
  'Control',
  'Latin Small Letter O With Diaeresis',
  'Euro Sign',
  'Emoji: Grinning Face',
  'Hebrew Letter Dalet With Dagesh',
];

describe('sealContent', () => {
  it('writes the sample of RFC 8785 (sections 3.2.2 and 3.2.4) to the very byte', () => {
    const expected = Buffer.from(rfcBytes.replaceAll(/\s/g, ''), 'hex');
    const seal = sealContent(JSON.parse(rfcSample));
    expect(Buffer.from(seal.sealedText, 'utf8').equals(expected)).toBe(true);
    expect(seal.sealSha256).toBe(createHash('sha256').update(expected).digest('hex'));
  });

  it('orders members as the sample of RFC 8785 (section 3.2.3) does', () => {
    const { sealedText } = sealContent(JSON.parse(rfcSortSample));
    const positions = rfcSorted.map((value) => sealedText.indexOf(value));
    expect(positions.every((position) => position > 0)).toBe(true);
    expect(positions).toEqual([...positions].sort((a, b) => a - b));
  });

  it('hashes the empty object to the sum that the tool sha256sum prints for its two bytes', () => {
    expect(sealContent({}).sealSha256).toBe(
      '44136fa355b3678a1146ad16f7e8649e94fb4fc21fe77e8310c060f61caaff8a',
    );
  });

  it('gives one seal for one content, whatever the order of its members', () => {
    expect(sealContent({ a: 1, b: [2, { c: 3, d: 4 }] })).toEqual(
      sealContent({ b: [2, { d: 4, c: 3 }], a: 1 }),
    );
  });

  it('refuses numbers that JSON does not have', () => {
    expect(() => sealContent({ peakKpa: Number.NaN })).toThrow();
    expect(() => sealContent(undefined)).toThrow(TypeError);
  });
});

describe('sealHolds', () => {
  it('holds for the text as it was sealed and breaks when one character differs', () => {
    const seal = sealContent({ peakKpa: 141.5 });
    expect(sealHolds(seal)).toBe(true);
    expect(sealHolds({ ...seal, sealedText: seal.sealedText.replace('141.5', '141.6') })).toBe(false);
  });
});
