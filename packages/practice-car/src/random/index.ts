export * from './draw-between.js';
export * from './draw-normal.js';
export * from './draw-one.js';
export * from './seeded-random.js';
