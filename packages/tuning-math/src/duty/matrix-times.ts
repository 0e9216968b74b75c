/**
 * Product of a matrix, row by row, and a vector, into `product`, which has an entry for each row. Four rows go side by
 * side, so that no addition waits for the one before it: this is where a decision spends much of its time.
 *
 * @param from where the vector begins in `vectors`
 */
export function matrixTimes(
  matrix: Float64Array,
  vectors: Float64Array,
  from: number,
  product: Float64Array,
): void {
  const rows = product.length;
  const columns = rows === 0 ? 0 : (matrix.length / rows) | 0;
  let row = 0;
  for (; row + 3 < rows; row += 4) {
    const first = row * columns;
    const second = first + columns;
    const third = second + columns;
    const fourth = third + columns;
    let one = 0;
    let two = 0;
    let three = 0;
    let four = 0;
    for (let k = 0; k < columns; k += 1) {
      const factor = vectors[from + k] as number;
      one += (matrix[first + k] as number) * factor;
      two += (matrix[second + k] as number) * factor;
      three += (matrix[third + k] as number) * factor;
      four += (matrix[fourth + k] as number) * factor;
    }
    product[row] = one;
    product[row + 1] = two;
    product[row + 2] = three;
    product[row + 3] = four;
  }
  for (; row < rows; row += 1) {
    let sum = 0;
    for (let k = 0; k < columns; k += 1)
      sum += (matrix[row * columns + k] as number) * (vectors[from + k] as number);
    product[row] = sum;
  }
}
