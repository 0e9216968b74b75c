export type { StripFigures, StripPull, StripSize } from './strip-figures.js';
export { layoutPeakStrip } from './layout-peak-strip.js';
export { peakStripHeight } from './peak-strip-height.js';
export { describeStrip } from './describe-strip.js';
export { stripTable } from './strip-table.js';
