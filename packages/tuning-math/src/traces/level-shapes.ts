/** Bins of one level are made of so many of the level below. */
export const LEVEL_FACTOR = 4;
/** Bins of one tile: what is stored, sent and kept as one piece. */
export const TILE_BINS = 4096;

/** One level of a pyramid of samples. */
export interface LevelShape {
  /** Rows of the log in each bin (the last may hold fewer); 1 at the lowest level, where bins are the samples. */
  readonly rowsPerBin: number;
  readonly binCount: number;
}

/**
 * The levels of a pyramid over the rows of a log: the rows themselves, then bins of 4, 16, 64 and so on, up to the
 * first level that fits one tile.
 *
 * @param rowCount rows of the log, a whole number >= 0
 * @throws RangeError for a row count that is none
 */
export function levelShapes(rowCount: number): LevelShape[] {
  if (!Number.isInteger(rowCount) || rowCount < 0) {
    throw new RangeError(`levelShapes needs a whole number of rows, 0 or more, got ${rowCount}`);
  }
  const shapes: LevelShape[] = [{ rowsPerBin: 1, binCount: rowCount }];
  for (
    let rowsPerBin = LEVEL_FACTOR;
    (shapes.at(-1)?.binCount ?? 0) > TILE_BINS;
    rowsPerBin *= LEVEL_FACTOR
  ) {
    shapes.push({ rowsPerBin, binCount: Math.ceil(rowCount / rowsPerBin) });
  }
  return shapes;
}
