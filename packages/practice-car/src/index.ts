export * from './random/index.js';
