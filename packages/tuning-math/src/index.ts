export * from './errors.js';
export * from './units/index.js';
export * from './duty/index.js';
export * from './log/index.js';
export * from './numerics/index.js';
export * from './air/index.js';
export * from './engine/index.js';
export * from './statistics/index.js';
