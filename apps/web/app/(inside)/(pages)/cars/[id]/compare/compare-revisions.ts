import type { PresetRevision } from '@pullbook/contracts';
import type { PersonsUnits } from '../../../../../../components/units/units-of';
import { compareFigure, compareText, type ComparedGroup, type FigureForm } from './compared';

/** Figures in per cent, to the tenth. */
export const perCent: FigureForm = {
  write: (value) => `${Math.round(10 * value) / 10} %`,
  writeDifference: (amount) => {
    const points = Math.round(10 * amount) / 10;
    return `${points} ${points === 1 ? 'point' : 'points'}`;
  },
  least: 0.05,
};

/** Goals and limits in the person's unit. */
export const goalIn = (units: PersonsUnits): FigureForm => ({ write: units.write, least: 0.05 });

const plainFigure: FigureForm = { write: (value) => String(Math.round(1000 * value) / 1000), least: 0.0005 };
const seconds: FigureForm = { write: (value) => `${value} s`, least: 0.05 };

const kindWords = { standing: 'for good', 'timed-override': 'timed override' } as const;

/** What is different in the right one of two preset revisions, of the same preset or of two. */
export function compareRevisions(
  left: PresetRevision,
  right: PresetRevision,
  units: PersonsUnits,
): readonly ComparedGroup[] {
  const goal = goalIn(units);
  return [
    {
      title: 'Goal',
      lines: [
        compareFigure('Target', left.targetKpa, right.targetKpa, goal),
        compareFigure('Tolerance, ±', left.toleranceKpa, right.toleranceKpa, goal),
        compareFigure('Ceiling', left.ceilingKpa, right.ceilingKpa, goal),
      ],
    },
    {
      title: 'Settings',
      lines: [
        compareFigure('Duty', left.dutyPct, right.dutyPct, perCent),
        compareFigure('Gate hold', left.gateHoldPct, right.gateHoldPct, perCent),
        compareFigure('Correction strength', left.correctionStrength, right.correctionStrength, plainFigure),
        compareText('Kind', kindWords[left.kind], kindWords[right.kind]),
        compareFigure('Override holds for', left.holdSeconds, right.holdSeconds, seconds),
      ],
    },
    {
      title: 'Words',
      lines: [
        compareText('Name', left.name, right.name),
        compareText('Slot', String(left.slot), String(right.slot)),
        compareText('Purpose', left.purpose, right.purpose),
      ],
    },
  ];
}
