/** Place in an array where a row of numbers starts. */
export interface RowStart {
  readonly values: Float64Array;
  readonly start: number;
}

/** Sum of products of two rows of `length` numbers; the caller answers for both being that long. */
export function dotProduct(one: RowStart, other: RowStart, length: number): number {
  const { values: left, start: leftStart } = one;
  const { values: right, start: rightStart } = other;
  let sum = 0;
  for (let k = 0; k < length; k += 1) {
    sum += (left[leftStart + k] as number) * (right[rightStart + k] as number);
  }
  return sum;
}
