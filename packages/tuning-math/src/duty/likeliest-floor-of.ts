import { COARSE_SCATTER } from './coarse-fit.js';
import type { PlacedRatios } from './placed-ratios.js';
import type { CurveLibrary } from './tabulate-curves.js';
import { likeliestFloor, tabulatedRise, type FloorPrior } from './tabulated-rise.js';

/** What was read, and how a curve whose floor is sought is moved. */
export interface FloorQuestion {
  readonly readings: PlacedRatios;
  readonly prior: FloorPrior;
  readonly shift: number;
  readonly scale: number;
}

const TRUST = 1 / (COARSE_SCATTER * COARSE_SCATTER);

/** Floor (peak at zero duty over target) that brings one library curve nearest to the pulls. */
export function likeliestFloorOf(library: CurveLibrary, row: number, question: FloorQuestion): number {
  const { readings, prior, shift, scale } = question;
  const { duties, trusts, squareTrusts } = readings;
  let square = 0;
  let cross = 0;
  for (let lot = 0; lot < duties.length; lot += 1) {
    const rise = tabulatedRise(library.rises, row, (duties[lot] as number) - shift) * scale;
    const squareTrust = squareTrusts[lot] as number;
    square += (1 - rise) * (1 - rise) * squareTrust;
    cross += (1 - rise) * ((trusts[lot] as number) - rise * squareTrust);
  }
  return likeliestFloor(TRUST * square, TRUST * cross, prior);
}
