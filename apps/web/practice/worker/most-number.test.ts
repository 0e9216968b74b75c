import { drawPracticeCar } from '@pullbook/practice-car';
import { expect, test } from 'vitest';
import { mostNumber } from '../../app/(inside)/(pages)/practice/read-order';

test('the highest number that the page takes is the highest that there is a practice car for', () => {
  expect(drawPracticeCar({ level: 'steep', number: mostNumber }).sheet.number).toBe(mostNumber);
  expect(() => drawPracticeCar({ level: 'steep', number: mostNumber + 1 })).toThrow(
    `from 1 to ${mostNumber}`,
  );
});
