/** What the scanner must know of the table. */
export interface ScanLayout {
  readonly delimiter: string;
  readonly decimalMarks: readonly ('.' | ',')[];
  /** For each column of the file, the place of its value in the row, or -1 where it is not wanted. */
  readonly places: Int32Array;
  readonly placeCount: number;
  /** Physical lines to pass over first. */
  readonly skipLineCount: number;
  /** Byte that ends a line: 10, or 13 in files that know no line feed. */
  readonly lineEnd: number;
}

/** What was met beside rows of numbers. */
export interface ScanCounts {
  rows: number;
  /** Rows with words where numbers belong: repeated headers, remarks. */
  wordRows: number;
  shortRows: number;
  longRows: number;
}
