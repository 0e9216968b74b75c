export type { DriftFigures, DriftMark, DriftSince } from './drift-figures.js';
export { layoutDriftChart } from './layout-drift-chart.js';
