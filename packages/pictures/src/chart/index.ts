export type { ChartCurvePoint, ChartFigures, ChartPull, ChartSize } from './chart-figures.js';
