/** By what a log is known to come from the same logger, set the same way, as another one. */
export interface LogShape {
  /** Headers in the order of the columns; `column 1`, `column 2`… where the file has none. */
  readonly headers: readonly string[];
  /** Texts of the unit row, '' where it says nothing; all '' without one. */
  readonly unitTexts: readonly string[];
  readonly hasHeader: boolean;
}

/** Of all that is known of a table, what makes its shape. */
export function logShape({ headers, unitTexts, hasHeader }: LogShape): LogShape {
  return { headers, unitTexts, hasHeader };
}

/**
 * A text that is equal for logs of one shape alone: headers and unit row, without regard to case and to spaces
 * around. Brackets and punctuation count, so a logger that was set to another unit has another shape.
 *
 * @example shapeKey({ headers: ['Time '], unitTexts: ['s'], hasHeader: true }) // '[true,["time"],["s"]]'
 */
export function shapeKey({ headers, unitTexts, hasHeader }: LogShape): string {
  const plain = (text: string): string => text.trim().replaceAll(/\s+/g, ' ').toLowerCase();
  return JSON.stringify([hasHeader, headers.map(plain), unitTexts.map(plain)]);
}
