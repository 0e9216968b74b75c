export * from './figures/index.js';
export * from './strip/index.js';
export * from './chart/index.js';
export * from './map/index.js';
export * from './grid/index.js';
export * from './drift/index.js';
export * from './svg/index.js';
export { NotDrawableError } from './errors.js';
