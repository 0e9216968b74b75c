import type { LevelShape } from './level-shapes.js';

/**
 * Index of the coarsest level that still has at least one bin for each column of pixels; 0, the samples, where none
 * is that fine.
 *
 * @param levels finest first, as `levelShapes` gives them
 * @param rowsPerPixel rows of the log that one column of pixels stands for, > 0
 */
export function pickLevel(levels: readonly LevelShape[], rowsPerPixel: number): number {
  const index = levels.findLastIndex(({ rowsPerBin }) => rowsPerBin <= rowsPerPixel);
  return Math.max(0, index);
}
