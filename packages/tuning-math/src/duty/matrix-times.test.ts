import fc from 'fast-check';
import { Matrix } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { matrixTimes } from './matrix-times.js';

describe('matrixTimes(matrix, vectors, from, product)', () => {
  // Source of the other answer: ml-matrix, a library of linear algebra from the registry.
  it('is the product that a library of linear algebra gives, whatever the size and the place', () => {
    const entry = fc.double({ min: -100, max: 100, noNaN: true });
    const cases = fc.integer({ min: 0, max: 9 }).chain((size) =>
      fc.record({
        size: fc.constant(size),
        matrix: fc.array(entry, { minLength: size * size, maxLength: size * size }),
        before: fc.array(entry, { maxLength: 5 }),
        vector: fc.array(entry, { minLength: size, maxLength: size }),
      }),
    );
    fc.assert(
      fc.property(cases, ({ size, matrix, before, vector }) => {
        const product = new Float64Array(size);
        matrixTimes(
          Float64Array.from(matrix),
          Float64Array.from([...before, ...vector]),
          before.length,
          product,
        );
        const expected =
          size === 0 ? [] : Matrix.from1DArray(size, size, matrix).mmul(Matrix.columnVector(vector));
        const wanted = size === 0 ? [] : (expected as Matrix).to1DArray();
        product.forEach((value, row) => expect(value).toBeCloseTo(wanted[row] ?? NaN, 8));
        expect(product).toHaveLength(wanted.length);
      }),
    );
  });

  it('takes as many rows as the product has entries', () => {
    const matrix = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10];
    const product = new Float64Array(5);
    matrixTimes(Float64Array.from(matrix), Float64Array.from([0, 3, -1]), 1, product);
    expect([...product]).toEqual(
      Matrix.from1DArray(5, 2, matrix)
        .mmul(Matrix.columnVector([3, -1]))
        .to1DArray(),
    );
  });
});
