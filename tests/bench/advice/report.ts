import { byShape } from './by-shape.js';
import { calibrate, PROMISED_PCT, type Calibration } from './calibration.js';
import { KNOWING } from './knowing-method.js';
import { scoreRuns } from './score-runs.js';
import { scoreTable } from './score-table.js';
import { PULLS_ON_RECORD, TIMES_DECIDED, WARM_UPS, type TimeAlone } from './time-alone.js';
import type { TuningRun } from './tune-car.js';

/** The runs of one method, or in one wrong world, by name. */
export interface NamedRuns {
  readonly name: string;
  readonly runs: readonly TuningRun[];
}

const scored = ({ name, runs }: NamedRuns) => [name, scoreRuns(runs)] as const;

/** Every method on the same cars; ours comes first. */
export function sideBySideLines(methods: readonly NamedRuns[]): string[] {
  return ['## Side by side', '', ...scoreTable('method', methods.map(scored)), ''];
}

/** Ours beside one who knows the response, on the cars that can be tuned. */
export function boundLines(ours: readonly TuningRun[], knowing: readonly TuningRun[]): string[] {
  const healthy = (runs: readonly TuningRun[]) => runs.filter(({ car }) => car.shape.kind === 'healthy');
  return [
    '## What holds the rest back',
    '',
    `Beside ours, on the cars that can be tuned, stands one who '${KNOWING}': it knows each car's own response and scatter and only has to learn its level (within 2.5 %; heat soak and false readings it ignores). It keeps the same limits and asks the same confidence. What lies between it and ours is the price of finding the response out, within the limits of step and risk. How much of that price knowledge of responses in general could save is told by [believers who know the formulas](knowledge.md).`,
    '',
    ...scoreTable('who', [
      scored({ name: 'Pullbook', runs: healthy(ours) }),
      scored({ name: KNOWING, runs: healthy(knowing) }),
    ]),
    '',
  ];
}

export function byShapeLines(ours: readonly TuningRun[]): string[] {
  const rows = byShape(ours).map(([name, runs]) => scored({ name, runs }));
  return ['## Pullbook by shape', '', ...scoreTable('shape', rows), ''];
}

/** Ours where noise, soak, outliers and shapes are not what it takes for granted. */
export function wrongWorldLines(worlds: readonly NamedRuns[]): string[] {
  if (worlds.length === 0) return [];
  return [
    '## Where the cars are not as it expects',
    '',
    'Pullbook on the same kinds of cars, one thing at a time wrong by half and by double. A scatter of twice the usual reaches 5 %, with which a tolerance of 2 % cannot be proved on some cars; they are stopped, as they should be, and count as not accepted.',
    '',
    ...scoreTable('cars', worlds.map(scored)),
    '',
  ];
}

/** Ours with earlier cars of the build on record. */
export function earlierCarLines(records: readonly NamedRuns[]): string[] {
  if (records.length === 0) return [];
  return [
    '## With earlier cars of the build on record',
    '',
    'The same cars each time. Cars of one build deviate from it by 2.5 points along duty and 3 % in level (standard deviations), the present car as much as the others; those on record were tuned by hand for targets of their own. Accepts and stops rest on the present car alone.',
    '',
    ...scoreTable('on record', records.map(scored)),
    '',
  ];
}

/** `picture`: path of the picture beside the page, null where none is drawn. */
export function calibrationLines(ours: readonly TuningRun[], picture: string | null): string[] {
  const rows = calibrate(ours);
  return [
    '## Calibration',
    '',
    'How many of the next peaks lay inside the range that was predicted for them, before any fault showed; in brackets, between what the share may lie by chance alone (95 %).',
    '',
    ...(picture === null ? [] : [`![Share of next peaks inside the predicted ranges](${picture})`, '']),
    `| cars | pulls | ${PROMISED_PCT.map((pct) => `${pct} % range held, %`).join(' | ')} |`,
    '| --- | --- | --- | --- | --- |',
    ...rows.map(calibrationRow),
    '',
    '\\* drawn for not fitting their goal: the first peak of a car whose floor lies over the target is outside by the very choice of the car.',
    '',
  ];
}

function calibrationRow({ name, pulls, heldPct, intervalsPct, isChosenByOutcome }: Calibration): string {
  const cells = heldPct.map((pct, range) => {
    const [low, high] = intervalsPct[range] ?? [pct, pct];
    return `${pct.toFixed(1)} (${low.toFixed(0)} to ${high.toFixed(0)})`;
  });
  return `| ${name}${isChosenByOutcome ? ' \\*' : ''} | ${pulls} | ${cells.join(' | ')} |`;
}

/** How long a decision takes: in the runs, and by itself. */
export function timeLines(ours: readonly TuningRun[], threads: number, alone: TimeAlone): string[] {
  const { decisionMsP50, decisionMsP95, manyPulls, manyPullsMsP95 } = scoreRuns(ours);
  return [
    '## Time',
    '',
    aloneLine(alone),
    '',
    `Inside the runs, where ${threads === 1 ? 'one thread works' : `${threads} threads work`} through the cars, one decision took ${decisionMsP50.toFixed(1)} ms at the median and ${decisionMsP95.toFixed(1)} ms at the 95th percentile; with 20 pulls or more on record ${manyPullsMsP95.toFixed(1)} ms at the 95th percentile (${manyPulls} decisions).`,
    '',
  ];
}

function aloneLine({ requests, decisions, msP50, msP95 }: TimeAlone): string {
  if (requests === 0) return `No run came to ${PULLS_ON_RECORD} pulls: a decision by itself was not timed.`;
  return `With ${PULLS_ON_RECORD} pulls on record one decision by itself took ${msP50.toFixed(1)} ms at the median and ${msP95.toFixed(1)} ms at the 95th percentile on the machine that made this page. Taken after all threads had ended, on the main thread, one decision after the other: ${requests} requests that came up in the runs above, each decided ${TIMES_DECIDED} times after ${WARM_UPS} decisions to warm up, all ${decisions} decisions counted.`;
}
