import { createRequire } from 'node:module';

export type Weight = 'regular' | 'bold';

const require = createRequire(import.meta.url);
const house = (name: string): string =>
  require.resolve(
    `@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-${name}-normal.woff`,
  );
const other = (name: string): string => require.resolve(`dejavu-fonts-ttf/ttf/${name}.ttf`);

/** In the order in which they are asked for a letter; the last knows Greek, Cyrillic and many more. */
const FACES: Readonly<Record<Weight, readonly { readonly name: string; readonly file: string }[]>> = {
  regular: [
    { name: 'house', file: house('latin-400') },
    { name: 'house-more', file: house('latin-ext-400') },
    { name: 'other', file: other('DejaVuSans') },
  ],
  bold: [
    { name: 'house-bold', file: house('latin-700') },
    { name: 'house-more-bold', file: house('latin-ext-700') },
    { name: 'other-bold', file: other('DejaVuSans-Bold') },
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
  for (const { name, file } of [...FACES.regular, ...FACES.bold]) doc.registerFont(name, file);
}

/** Splits a text into runs of which each face has all letters; letters that none has become a box. */
export function splitByFace(doc: PDFKit.PDFDocument, text: string, weight: Weight): readonly Run[] {
  const runs: { face: string; text: string }[] = [];
  for (const letter of text) {
    const found = faceOf(doc, letter, weight);
    const last = runs.at(-1);
    if (last?.face === found.face) last.text += found.text;
    else runs.push(found);
  }
  return runs;
}

function faceOf(doc: PDFKit.PDFDocument, letter: string, weight: Weight): { face: string; text: string } {
  const codePoint = letter.codePointAt(0) ?? 0;
  const face = FACES[weight].find(({ name }) => hasGlyph(doc, name, codePoint));
  const last = FACES[weight].at(-1)?.name ?? '';
  return face ? { face: face.name, text: letter } : { face: last, text: UNKNOWN };
}

function hasGlyph(doc: PDFKit.PDFDocument, face: string, codePoint: number): boolean {
  return (doc.font(face) as unknown as Glyphs)._font.font.hasGlyphForCodePoint(codePoint);
}
