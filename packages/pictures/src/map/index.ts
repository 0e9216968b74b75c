export { layoutCompressorMap } from './layout-compressor-map.js';
export type { MapFigures, MapGoalLine, MapPull, MapSize, MapSpeedLine, MapSpot } from './map-figures.js';
