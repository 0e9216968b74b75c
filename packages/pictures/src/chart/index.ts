export type { ChartCurvePoint, ChartFigures, ChartPull, ChartSize } from './chart-figures.js';
export { layoutResponseChart } from './layout-response-chart.js';
