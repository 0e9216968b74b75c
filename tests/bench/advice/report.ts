import { scoreRuns } from './score-runs.js';
import { scoreTable } from './score-table.js';
import type { TuningRun } from './tune-car.js';

/** The runs of one method, by name. */
export interface MethodRuns {
  readonly name: string;
  readonly runs: readonly TuningRun[];
}

/** Share of pulls whose reading lay inside the 95 % range predicted for it, before any fault showed. */
function heldPct(runs: readonly TuningRun[]): number {
  const held = runs.flatMap(({ pulls, predictions }) =>
    pulls.flatMap(({ peakKpa, showsFault }, index) => {
      const range = predictions[index];
      return showsFault || !range ? [] : [peakKpa >= range.lowKpa && peakKpa <= range.highKpa];
    }),
  );
  return (100 * held.filter(Boolean).length) / Math.max(1, held.length);
}

function byShape(runs: readonly TuningRun[]): [string, TuningRun[]][] {
  const shapes = new Map<string, TuningRun[]>();
  for (const run of runs) {
    const name = run.car.shape.name;
    shapes.set(name, [...(shapes.get(name) ?? []), run]);
  }
  return [...shapes];
}

/** Side by side, then ours by shape, then ranges and time; ours comes first in `methods`. */
export function reportLines(methods: readonly MethodRuns[]): string[] {
  const ours = methods[0]?.runs ?? [];
  const shapes = byShape(ours);
  const score = scoreRuns(ours);
  return [
    '## Side by side',
    '',
    ...scoreTable(
      'method',
      methods.map(({ name, runs }) => [name, scoreRuns(runs)] as const),
    ),
    '',
    '## Pullbook by shape',
    '',
    ...scoreTable(
      'shape',
      shapes.map(([name, runs]) => [name, scoreRuns(runs)] as const),
    ),
    '',
    '## Calibration and time',
    '',
    `Of the predicted 95 % ranges, ${heldPct(ours).toFixed(1)} % held the next reading; by shape:`,
    '',
    '| shape | held, % |',
    '| --- | --- |',
    ...shapes.map(([name, runs]) => `| ${name} | ${heldPct(runs).toFixed(1)} |`),
    '',
    `One decision took ${score.decisionMsP50.toFixed(1)} ms at the median and ${score.decisionMsP95.toFixed(1)} ms at the 95th percentile on the machine that made this page.`,
    '',
  ];
}
