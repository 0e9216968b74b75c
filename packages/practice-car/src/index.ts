export * from './random/index.js';
export * from './faults/index.js';
export * from './physical/index.js';
export * from './shapes/index.js';
export * from './sensors/index.js';
export * from './practice/index.js';
