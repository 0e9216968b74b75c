/**
 * Product of a square matrix, row by row, and a vector, into `product`. Four rows go side by side, so that no
 * addition waits for the one before it: this is where a decision spends much of its time.
 *
 * @param from where the vector begins in `vectors`
 */
export function matrixTimes(
  matrix: Float64Array,
  vectors: Float64Array,
  from: number,
  product: Float64Array,
): void {
  const size = Math.sqrt(matrix.length);
  let row = 0;
  for (; row + 3 < size; row += 4) {
    const first = row * size;
    const second = first + size;
    const third = second + size;
    const fourth = third + size;
    let [one, two, three, four] = [0, 0, 0, 0];
    for (let k = 0; k < size; k += 1) {
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
  for (; row < size; row += 1) {
    let sum = 0;
    for (let k = 0; k < size; k += 1)
      sum += (matrix[row * size + k] as number) * (vectors[from + k] as number);
    product[row] = sum;
  }
}
