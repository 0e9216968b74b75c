import type { PaperHeader, PaperQuery, Units } from '@pullbook/contracts';
import type { PaperChoice } from './job-sheet-pdf.js';

interface Usual {
  readonly units: Units;
  readonly paperHeader: PaperHeader;
}

/** What the reader asked for, and where they did not, the reader's unit and the workshop's paper. */
export function choosePaper(asked: PaperQuery, { units, paperHeader }: Usual): PaperChoice {
  return { paper: asked.paper ?? paperHeader.paper, pressure: asked.pressure ?? units.pressure };
}
