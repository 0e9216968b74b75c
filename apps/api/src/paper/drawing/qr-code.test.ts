import jsQR from 'jsqr';
import { describe, expect, it } from 'vitest';
import { makePaper, type Paper } from './open-paper.js';
import { drawQrCode } from './qr-code.js';

const SIZE = 84;
/** Dots per point of the picture that the reader is shown. */
const SCALE = 6;

/** Draws onto a real page and keeps what was drawn as black and white dots. */
async function dotsOf(url: string): Promise<Uint8ClampedArray> {
  const side = SIZE * SCALE;
  const dots = new Uint8ClampedArray(side * side * 4).fill(255);
  const black: [number, number, number, number][] = [];
  const options = {
    size: 'a4',
    title: 'code',
    author: 'test',
    foot: '',
    footLines: [],
    madeAt: new Date(0),
  } as const;
  await makePaper(options, (paper: Paper) => {
    const rect = paper.doc.rect.bind(paper.doc);
    paper.doc.rect = (x, y, width, height) => {
      if (width !== SIZE) black.push([x, y, width, height]);
      return rect(x, y, width, height);
    };
    drawQrCode(paper, paper.root, url, { x: 0, y: 0, size: SIZE, alt: 'code' });
  });
  for (const [x, y, width, height] of black) {
    for (let row = Math.round(y * SCALE); row < Math.round((y + height) * SCALE); row += 1) {
      for (let column = Math.round(x * SCALE); column < Math.round((x + width) * SCALE); column += 1) {
        dots.fill(0, (row * side + column) * 4, (row * side + column) * 4 + 3);
      }
    }
  }
  return dots;
}

describe('drawQrCode(paper, parent, url, place)', () => {
  it.each([
    'http://127.0.0.1:3000/visits/019aba00-0000-7000-8000-000000000231',
    'https://workshop.example/r/Zk3vY1o0T9bWc5pQ2xR7uA8sD4fG6hJ0kL1zX2cV3b4',
  ])('draws a code that an independent reader (jsQR) reads as %s', async (url) => {
    expect(jsQR.default(await dotsOf(url), SIZE * SCALE, SIZE * SCALE)?.data).toBe(url);
  });

  it('keeps the quiet zone of four modules that ISO/IEC 18004 asks for', async () => {
    const dots = await dotsOf('http://127.0.0.1:3000/visits/1');
    const side = SIZE * SCALE;
    // 30 bytes at level M need version 3: 29 modules and twice 4 of quiet zone.
    const quiet = Math.floor((side / 37) * 4) - 1;
    const edge = Array.from({ length: side }, (_, row) =>
      Array.from({ length: quiet }, (_, column) => dots[(row * side + column) * 4]),
    ).flat();
    expect(new Set(edge)).toEqual(new Set([255]));
    expect(new Set(dots)).toContain(0);
  });
});
