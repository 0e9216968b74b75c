import { create } from 'qrcode';
import { ink } from './inks.js';
import type { Paper } from './open-paper.js';
import { drawOrnament, drawTagged } from './tagged.js';

/** ISO/IEC 18004: blank modules on each side. */
const QUIET_MODULES = 4;

/**
 * An address as a QR code (error correction M) in vectors, quiet zone included in its size; tagged as a figure and
 * followable by a click.
 */
export function drawQrCode(
  { doc }: Paper,
  parent: PDFKit.PDFStructureElement,
  url: string,
  place: { readonly x: number; readonly y: number; readonly size: number; readonly alt: string },
): void {
  const { modules } = create(url, { errorCorrectionLevel: 'M' });
  const module = place.size / (modules.size + 2 * QUIET_MODULES);
  const at = (index: number): number => (index + QUIET_MODULES) * module;
  const bbox = [place.x, place.y, place.x + place.size, place.y + place.size] as const;
  drawOrnament(doc, () => doc.rect(place.x, place.y, place.size, place.size).fill(ink.ground));
  drawTagged(doc, parent, { tag: 'Figure', alt: `${place.alt}: ${url}`, bbox }, () => {
    for (let row = 0; row < modules.size; row += 1) {
      for (let column = 0; column < modules.size; column += 1) {
        const start = column;
        while (column < modules.size && modules.get(row, column)) column += 1;
        if (column > start)
          doc.rect(place.x + at(start), place.y + at(row), (column - start) * module, module);
      }
    }
    doc.fill('#000000');
  });
}
