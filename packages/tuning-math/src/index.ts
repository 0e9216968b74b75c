export * from './errors.js';
export * from './units/index.js';
export * from './duty/index.js';
