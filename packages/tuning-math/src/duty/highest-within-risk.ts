import { chanceOverCeiling, type DutySituation } from './duty-situation.js';

/**
 * Position in the grid of the highest setting, up to a position, whose chance of passing the ceiling is within a
 * limit; the lowest setting where that holds for none. The chance rises with duty.
 *
 * Cost: O(log settings) predictions.
 */
export function highestWithinRisk(situation: DutySituation, top: number, limit: number): number {
  const isWithin = (index: number): boolean =>
    chanceOverCeiling(situation, situation.grid[index] as number) <= limit;
  if (isWithin(top)) return top;
  let low = 0;
  let high = top - 1;
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if (isWithin(middle)) low = middle;
    else high = middle - 1;
  }
  return low;
}
