import type { PressureFormat } from '../figures/pressure-format.js';
import { sortOfPull } from '../figures/sort-of-pull.js';
import type { StripFigures, StripPull } from './strip-figures.js';

/** Up to here every pull is named; beyond, how many there are and how far they reach. */
const MOST_NAMED = 12;

/**
 * The strip in words, for those who do not see it: goal, ceiling, every pull, what comes next.
 *
 * @returns one or more sentences
 */
export function describeStrip(figures: StripFigures, format: PressureFormat): string {
  const { ceilingKpa, pulls, next } = figures;
  const over = pulls.filter((pull) => sortOfPull(pull, ceilingKpa) === 'over');
  const usable = pulls.filter((pull) => sortOfPull(pull, ceilingKpa) === 'pull');
  const voided = pulls.filter((pull) => pull.isVoid);
  const parts = [
    `Boost in ${format.unit}: ${describeGoal(figures, format)}`,
    pulls.length === 0 ? 'no pulls yet' : '',
    describePulls(over, 'past the ceiling', format),
    describePulls(usable, '', format),
    describePulls(voided, 'void', format),
    next ? `next pull expected at ${format.write(next.lowKpa)} to ${format.write(next.highKpa)}` : '',
  ];
  return `${parts.filter(Boolean).join('; ')}.`;
}

/** 'target 138 ± 4, ceiling 150, base 62'. */
export function describeGoal(
  figures: Pick<StripFigures, 'baseKpa' | 'targetKpa' | 'toleranceKpa' | 'ceilingKpa'>,
  format: PressureFormat,
): string {
  const { baseKpa, targetKpa, toleranceKpa, ceilingKpa } = figures;
  const target =
    targetKpa === null
      ? 'no target agreed yet'
      : `target ${format.write(targetKpa)} ± ${format.write(toleranceKpa)}`;
  const ceiling = ceilingKpa === null ? 'no ceiling agreed yet' : `ceiling ${format.write(ceilingKpa)}`;
  const base = baseKpa === null ? '' : `base ${format.write(baseKpa)}`;
  return [target, ceiling, base].filter(Boolean).join(', ');
}

function describePulls(pulls: readonly StripPull[], word: string, format: PressureFormat): string {
  if (pulls.length === 0) return '';
  const count = `${pulls.length} ${pulls.length === 1 ? 'pull' : 'pulls'} ${word}`.trim();
  if (pulls.length <= MOST_NAMED) {
    return `${count}: ${pulls.map((pull) => `${pull.number} at ${format.write(pull.peakKpa)}`).join(', ')}`;
  }
  const peaks = pulls.map((pull) => pull.peakKpa);
  return `${count}, from ${format.write(Math.min(...peaks))} to ${format.write(Math.max(...peaks))}`;
}
