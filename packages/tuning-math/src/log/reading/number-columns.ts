const BLOCK_ROWS = 1 << 15;

/**
 * Columns of numbers that grow row by row without ever being copied as a whole: blocks of fixed size.
 * The first column is kept in double precision (time), the others in single: seven digits are more than
 * a logger writes.
 */
export class NumberColumns {
  readonly #columnCount: number;
  readonly #firstBlocks: Float64Array[] = [];
  readonly #blocks: Float32Array[][];
  #tail: Float32Array[] = [];
  #firstTail = new Float64Array(0);
  #blockRows: number;
  #used: number;
  #rowCount = 0;

  /** @param expectedRows rows of the first block: where it suffices, no column is ever copied */
  constructor(columnCount: number, expectedRows: number) {
    this.#columnCount = columnCount;
    this.#blockRows = Math.max(1, Math.ceil(expectedRows));
    this.#used = this.#blockRows;
    this.#blocks = Array.from({ length: columnCount }, () => []);
  }

  get rowCount(): number {
    return this.#rowCount;
  }

  /** Takes one row; `values` may be reused by the caller. */
  push(values: Float64Array): void {
    if (this.#used === this.#blockRows) this.#addBlock();
    const row = this.#used;
    this.#firstTail[row] = values[0] as number;
    for (let column = 1; column < this.#columnCount; column += 1) {
      (this.#tail[column] as Float32Array)[row] = values[column] as number;
    }
    this.#used = row + 1;
    this.#rowCount += 1;
  }

  #addBlock(): void {
    if (this.#firstBlocks.length > 0) this.#blockRows = BLOCK_ROWS;
    this.#firstTail = new Float64Array(this.#blockRows);
    this.#firstBlocks.push(this.#firstTail);
    this.#tail = this.#blocks.map((blocks, column) => {
      const block = new Float32Array(column === 0 ? 0 : this.#blockRows);
      blocks.push(block);
      return block;
    });
    this.#used = 0;
  }

  /** The first column as one array. Its blocks are let go. */
  takeFirst(): Float64Array {
    const [only, second] = this.#firstBlocks;
    if (only !== undefined && second === undefined) return only.subarray(0, this.#rowCount);
    const whole = new Float64Array(this.#rowCount);
    join(whole, this.#firstBlocks);
    return whole;
  }

  /** Another column as one array. Its blocks are let go, so each column can be taken once. */
  take(column: number): Float32Array {
    const blocks = this.#blocks[column] ?? [];
    const [only, second] = blocks;
    if (only !== undefined && second === undefined) return only.subarray(0, this.#rowCount);
    const whole = new Float32Array(this.#rowCount);
    join(whole, blocks);
    return whole;
  }
}

function join<T extends Float32Array | Float64Array>(whole: T, blocks: T[]): void {
  let offset = 0;
  for (const block of blocks) {
    whole.set(block.subarray(0, whole.length - offset), offset);
    offset += block.length;
  }
  blocks.length = 0;
}
