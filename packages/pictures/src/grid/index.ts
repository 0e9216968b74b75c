export type { GridCell, GridCellStatus, GridFigures } from './grid-figures.js';
export { layoutForecastGrid } from './layout-forecast-grid.js';
export { sayChance } from './say-chance.js';
