import type { StripSize } from './strip-figures.js';
import { stripHeight, stripMetrics } from './strip-metrics.js';

/** How high a peak strip of this form is, px or pt, whatever it shows: for keeping its place free. */
export function peakStripHeight(form: StripSize['form']): number {
  return stripHeight(stripMetrics(form));
}
