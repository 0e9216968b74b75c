/**
 * Point of the additive recurrence (Kronecker) sequence on the generalised golden ratio, which fills a unit
 * cube evenly: used instead of random numbers so that the same request always gives the same advice.
 *
 * @param index 0, 1, 2, ... the number of the point
 * @param dimensions 1 to 16
 * @returns `dimensions` numbers in [0, 1)
 * Source: Niederreiter, Random Number Generation and Quasi-Monte Carlo Methods (1992), ch. 3 (Kronecker sequences).
 */
export function lowDiscrepancyPoint(index: number, dimensions: number): number[] {
  const ratio = generalisedGoldenRatio(dimensions);
  const point: number[] = [];
  for (let axis = 1; axis <= dimensions; axis += 1) {
    const position = 0.5 + (index + 1) * ratio ** -axis;
    point.push(position - Math.floor(position));
  }
  return point;
}

const ratios = new Map<number, number>();

/** The root above 1 of x^(d+1) = x + 1. */
function generalisedGoldenRatio(dimensions: number): number {
  const known = ratios.get(dimensions);
  if (known !== undefined) return known;
  let root = 1.5;
  for (let round = 0; round < 60; round += 1) root = (1 + root) ** (1 / (dimensions + 1));
  ratios.set(dimensions, root);
  return root;
}
