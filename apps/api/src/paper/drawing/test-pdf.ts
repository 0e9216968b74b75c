import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

/** One element of a document's structure, as assistive technology meets it. */
interface Node {
  readonly role?: string;
  readonly alt?: string;
  readonly children?: readonly Node[];
}

export interface PdfFacts {
  readonly pageCount: number;
  /** Width and height of the first page, pt, rounded. */
  readonly size: readonly [number, number];
  readonly texts: readonly string[];
  readonly title: string;
  readonly language: string;
  readonly isTagged: boolean;
  /** Claims PDF/UA part 1 in its metadata. */
  readonly claimsUa: boolean;
  readonly roles: ReadonlySet<string>;
  readonly alts: readonly string[];
  readonly embeddedFontCount: number;
  readonly otherFontCount: number;
}

/** Reads a PDF with an independent reader (PDF.js): what the tests of paper go by. */
export async function readPdf(file: Buffer): Promise<PdfFacts> {
  const task = getDocument({ data: new Uint8Array(file), verbosity: 0 });
  const pdf = await task.promise;
  const meta = await pdf.getMetadata();
  const info = meta.info as { Title?: string; Language?: string };
  const mark = await pdf.getMarkInfo();
  const texts: string[] = [];
  const nodes: Node[] = [];
  let size: [number, number] = [0, 0];
  for (let number = 1; number <= pdf.numPages; number += 1) {
    const page = await pdf.getPage(number);
    const { items } = await page.getTextContent();
    texts.push(items.map((item) => ('str' in item ? item.str + (item.hasEOL ? '\n' : '') : '')).join(''));
    nodes.push((await page.getStructTree()) as Node);
    const { width, height } = page.getViewport({ scale: 1 });
    if (number === 1) size = [Math.round(width), Math.round(height)];
  }
  const all = nodes.flatMap(flatten);
  const raw = file.toString('latin1');
  const facts = {
    pageCount: pdf.numPages,
    size,
    texts: texts.map((text) => text.replace(/\s+/g, ' ')),
    title: info.Title ?? '',
    language: info.Language ?? '',
    isTagged: Boolean((mark as { Marked?: boolean } | null)?.Marked),
    claimsUa: /<pdfuaid:part>1<\/pdfuaid:part>/.test(raw),
    roles: new Set(all.flatMap(({ role }) => (role === undefined ? [] : [role]))),
    alts: all.flatMap(({ alt }) => (alt === undefined ? [] : [alt])),
    embeddedFontCount: countOf(raw, /\/FontFile[23] /g),
    otherFontCount: countOf(raw, /\/Subtype \/Type1\b/g),
  };
  await task.destroy();
  return facts;
}

function flatten(node: Node): Node[] {
  return [node, ...(node.children ?? []).flatMap(flatten)];
}

function countOf(text: string, pattern: RegExp): number {
  return [...text.matchAll(pattern)].length;
}
