import type { PressureFormat } from '../figures/pressure-format.js';
import type { PictureTable } from '../figures/shapes.js';
import { describeGoal } from '../strip/describe-strip.js';
import { standingOf } from '../strip/strip-table.js';
import type { ChartFigures } from './chart-figures.js';

/** The chart in words, for those who do not see it: axes, goal, pulls, the prediction's ends, what comes next. */
export function describeChart(figures: ChartFigures, format: PressureFormat): string {
  const { pulls, curve, curveIs, next } = figures;
  const first = curve[0];
  const last = curve.at(-1);
  const voided = pulls.filter((pull) => pull.isVoid).length;
  const parts = [
    `Peak boost in ${format.unit} over duty in %: ${describeGoal(figures, format)}`,
    pulls.length === 0
      ? 'no pulls yet'
      : `${pulls.length} ${pulls.length === 1 ? 'pull' : 'pulls'}, ${voided} of them void`,
    first && last
      ? `${curveIs === 'true' ? 'the true curve goes' : 'predicted'} from ${format.write(first.medianKpa)} at ${first.duty} % to ${format.write(last.medianKpa)} at ${last.duty} %`
      : '',
    next
      ? `next pull at ${next.dutyPct} %, expected at ${format.write(next.lowKpa)} to ${format.write(next.highKpa)}`
      : '',
  ];
  return `${parts.filter(Boolean).join('; ')}.`;
}

/** The chart as a table: each pull with its duty, its peak, and where that stands. */
export function chartTable(figures: ChartFigures, format: PressureFormat): PictureTable {
  return {
    header: ['Pull', 'Duty %', `Peak ${format.unit}`, 'Where it stands'],
    rows: figures.pulls.map((pull) => [
      String(pull.number),
      String(pull.dutyPct),
      format.write(pull.peakKpa),
      standingOf(pull, figures),
    ]),
  };
}
