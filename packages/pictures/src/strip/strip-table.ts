import type { PressureFormat } from '../figures/pressure-format.js';
import type { PictureTable } from '../figures/shapes.js';
import { sortOfPull } from '../figures/sort-of-pull.js';
import type { StripFigures, StripPull } from './strip-figures.js';

type Goal = Pick<StripFigures, 'targetKpa' | 'toleranceKpa' | 'ceilingKpa'>;

/** The strip as a table: each pull, its recorded peak, and where that stands. */
export function stripTable(figures: StripFigures, format: PressureFormat): PictureTable {
  return {
    header: ['Pull', `Peak ${format.unit}`, 'Where it stands'],
    rows: figures.pulls.map((pull) => [
      String(pull.number),
      format.write(pull.peakKpa),
      standingOf(pull, figures),
    ]),
  };
}

/** Where a recorded peak stands against target and ceiling, in words. */
export function standingOf(pull: Pick<StripPull, 'peakKpa' | 'isVoid'>, goal: Goal): string {
  const { targetKpa, toleranceKpa, ceilingKpa } = goal;
  const sort = sortOfPull(pull, ceilingKpa);
  if (sort === 'void') return 'void';
  if (sort === 'over') return 'past the ceiling';
  if (targetKpa === null) return 'no target yet';
  if (Math.abs(pull.peakKpa - targetKpa) <= toleranceKpa) return 'in tolerance';
  return pull.peakKpa < targetKpa ? 'below tolerance' : 'above tolerance';
}
