import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { sfntFromWoff } from './sfnt-from-woff.js';

export type Weight = 'regular' | 'bold';

const require = createRequire(import.meta.url);
const house = (name: string): Buffer =>
  sfntFromWoff(
    readFileSync(
      require.resolve(
        `@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-${name}-normal.woff`,
      ),
    ),
  );
const other = (name: string): Buffer => readFileSync(require.resolve(`dejavu-fonts-ttf/ttf/${name}.ttf`));

/** In the order in which they are asked for a letter; the last knows Greek, Cyrillic and many more. */
const FACES: Readonly<Record<Weight, readonly { readonly name: string; readonly font: Buffer }[]>> = {
  regular: [
    { name: 'house', font: house('latin-400') },
    { name: 'house-more', font: house('latin-ext-400') },
    { name: 'other', font: other('DejaVuSans') },
  ],
  bold: [
    { name: 'house-bold', font: house('latin-700') },
    { name: 'house-more-bold', font: house('latin-ext-700') },
    { name: 'other-bold', font: other('DejaVuSans-Bold') },
  ],
};

/** Stands for a letter that no face has. */
const UNKNOWN = '\u25a1';

/** A stretch of text in one face. */
export interface Run {
  readonly face: string;
  readonly text: string;
}

/** What is needed of the library's own font object, which its published types leave out. */
interface Glyphs {
  readonly _font: { readonly font: { hasGlyphForCodePoint(codePoint: number): boolean } };
}

/** Makes the faces known to a document; only those that are used are embedded. */
export function registerFaces(doc: PDFKit.PDFDocument): void {
  for (const { name, font } of [...FACES.regular, ...FACES.bold]) doc.registerFont(name, font);
}

/**
 * Splits a text into runs of which each face has all letters; letters that none has become a box. A word with one
 * letter from outside the house typeface is set in the other one as a whole.
 */
export function splitByFace(doc: PDFKit.PDFDocument, text: string, weight: Weight): readonly Run[] {
  const runs: { face: string; text: string }[] = [];
  for (const word of text.split(/(?<= )/)) {
    const letters = [...word].map((letter) => faceOf(doc, letter, weight));
    const other = letters.find(({ face }) => face === lastFace(weight));
    for (const letter of letters) {
      const face = other?.face ?? letter.face;
      const last = runs.at(-1);
      if (last?.face === face) last.text += letter.text;
      else runs.push({ face, text: letter.text });
    }
  }
  return runs;
}

function lastFace(weight: Weight): string {
  return FACES[weight].at(-1)?.name ?? '';
}

function faceOf(doc: PDFKit.PDFDocument, letter: string, weight: Weight): Run {
  const codePoint = letter.codePointAt(0) ?? 0;
  const face = FACES[weight].find(({ name }) => hasGlyph(doc, name, codePoint));
  return face ? { face: face.name, text: letter } : { face: lastFace(weight), text: UNKNOWN };
}

function hasGlyph(doc: PDFKit.PDFDocument, face: string, codePoint: number): boolean {
  return (doc.font(face) as unknown as Glyphs)._font.font.hasGlyphForCodePoint(codePoint);
}
