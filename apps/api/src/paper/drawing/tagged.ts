type Element = PDFKit.PDFStructureElement;

/** What an element says of itself to assistive technology; wider than the library's published types. */
export interface TagOptions {
  readonly tag: string;
  readonly alt?: string;
  /** Left, top, right, bottom of a figure on its page. */
  readonly bbox?: readonly [number, number, number, number];
  readonly scope?: 'Column' | 'Row';
}

/** Draws content as one element of the document's structure. */
export function drawTagged(
  doc: PDFKit.PDFDocument,
  parent: Element,
  { tag, ...options }: TagOptions,
  draw: () => void,
): void {
  parent.add(doc.struct(tag, options as PDFKit.Mixins.StructureElementOptions, [draw]));
}

/** An element that holds others. */
export function drawGroup(
  doc: PDFKit.PDFDocument,
  parent: Element,
  tag: string,
  fill: (group: Element) => void,
): void {
  const group = doc.struct(tag);
  parent.add(group);
  fill(group);
  group.end();
}

/** Draws what is for the eye alone: rules, frames, grounds. */
export function drawOrnament(doc: PDFKit.PDFDocument, draw: () => void): void {
  doc.markContent('Artifact', { type: 'Layout' });
  draw();
  doc.endMarkedContent();
}
