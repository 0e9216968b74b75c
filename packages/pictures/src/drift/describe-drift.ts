import type { PressureFormat } from '../figures/pressure-format.js';
import type { PictureTable } from '../figures/shapes.js';
import type { DriftFigures, DriftSince } from './drift-figures.js';

/** The chart in words, for those who do not see it. */
export function describeDrift(figures: DriftFigures, format: PressureFormat): string {
  const { baseline, since, centreKpa, firedAt } = figures;
  const last = since.at(-1);
  const fired = firedAt === null ? undefined : since[firedAt];
  const parts = [
    `Peaks in ${format.unit} at reference conditions over visits: ${baseline.length} of the baseline, mean ${format.write(centreKpa)}`,
    `${since.length} since`,
    last === undefined
      ? ''
      : `newest ${format.write(last.kpa)}, limits of a single pull ${format.write(last.lowKpa)} to ${format.write(last.highKpa)}, moving average ${format.write(last.averageKpa)} in limits ${format.write(last.averageLowKpa)} to ${format.write(last.averageHighKpa)}`,
    fired === undefined ? 'no alarm' : `alarm at pull ${fired.number} of visit ${fired.visitNumber}`,
  ];
  return `${parts.filter(Boolean).join('; ')}.`;
}

/** Each pull with its figures and where they stand. */
export function driftTable({ baseline, since }: DriftFigures, format: PressureFormat): PictureTable {
  const { unit, write } = format;
  return {
    header: [
      'Visit',
      'Pull',
      `Peak ${unit}`,
      `Limits ${unit}`,
      `Average ${unit}`,
      `Its limits ${unit}`,
      'Verdict',
    ],
    rows: [
      ...baseline.map(({ visitNumber, number, kpa }) => [
        ...[String(visitNumber), String(number), write(kpa)],
        ...['', '', '', 'baseline'],
      ]),
      ...since.map((pull) => [
        ...[String(pull.visitNumber), String(pull.number), write(pull.kpa)],
        `${write(pull.lowKpa)} to ${write(pull.highKpa)}`,
        write(pull.averageKpa),
        `${write(pull.averageLowKpa)} to ${write(pull.averageHighKpa)}`,
        verdictOf(pull),
      ]),
    ],
  };
}

function verdictOf({ isOut, isAverageOut }: DriftSince): string {
  if (isOut && isAverageOut) return 'pull and average outside';
  if (isOut) return 'pull outside';
  return isAverageOut ? 'average outside' : 'inside';
}
