export type { StripFigures, StripPull, StripSize } from './strip-figures.js';
