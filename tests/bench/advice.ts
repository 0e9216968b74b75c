// npm run bench:advice: the next-pull advice beside what people do by hand, on cars that it was not developed on.
// Writes docs/bench/advice.md. Options: --cars N, --seed N.
import { execFileSync } from 'node:child_process';
import fs from 'node:fs';
import path from 'node:path';
import { JUDGEMENT_SHAPES, type ShapeCar } from '@pullbook/practice-car';
import { adviseDuty } from '@pullbook/tuning-math';
import { drawCars } from './advice/draw-cars.js';
import { HAND_METHODS } from './advice/hand-methods.js';
import { scoreRuns, type Score } from './advice/score-runs.js';
import { tuneCar, type Method, type TuningRun } from './advice/tune-car.js';

const root = path.resolve(import.meta.dirname, '../..');

function option(name: string, otherwise: number): number {
  const at = process.argv.indexOf(`--${name}`);
  return at < 0 ? otherwise : Number(process.argv[at + 1]);
}

const advice: Method = (request) => {
  const { action, duty, prediction, reasons } = adviseDuty(request);
  return { action, duty, prediction, code: reasons[0]?.code };
};

const columns: ReadonlyArray<readonly [string, (score: Score) => string]> = [
  ['cars', (s) => String(s.cars)],
  ['pulls to accept, median / p90', (s) => `${s.pullsMedian} / ${s.pullsP90}`],
  ['over the oracle, mean', (s) => s.overOracle.toFixed(2)],
  ['passed the ceiling, % of cars', (s) => s.passedPct.toFixed(1)],
  ['by more than 5 %', (s) => s.passedFarPct.toFixed(1)],
  ['worst excess, %', (s) => s.worstExcessPct.toFixed(1)],
  ['wrong accepts, %', (s) => s.wrongPct.toFixed(1)],
  ['wrong by half a tolerance more', (s) => s.wrongFarPct.toFixed(1)],
  ['reachable, not accepted, %', (s) => s.stoppedPct.toFixed(1)],
  ['unreachable stopped, %', (s) => (s.unreachable === 0 ? '–' : s.unreachableStoppedPct.toFixed(0))],
  ['soaring faults stopped, %', (s) => (s.soaring === 0 ? '–' : s.soaringStoppedPct.toFixed(0))],
  ['falling faults stopped, % / pulls', (s) => sayFalling(s)],
  ['rule violations', (s) => String(s.violations)],
];

function sayFalling(score: Score): string {
  return score.falling === 0
    ? '–'
    : `${score.fallingStoppedPct.toFixed(0)} / ${score.fallingPulls.toFixed(1)}`;
}

function table(first: string, rows: ReadonlyArray<readonly [string, Score]>): string[] {
  const line = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;
  return [
    line([first, ...columns.map(([name]) => name)]),
    line([first, ...columns].map(() => '---')),
    ...rows.map(([name, score]) => line([name, ...columns.map(([, say]) => say(score))])),
  ];
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

function byShape(runs: readonly TuningRun[]): Map<string, TuningRun[]> {
  const shapes = new Map<string, TuningRun[]>();
  for (const run of runs) {
    const name = run.car.shape.name;
    shapes.set(name, [...(shapes.get(name) ?? []), run]);
  }
  return shapes;
}

function runAll(cars: readonly ShapeCar[], method: Method): TuningRun[] {
  return cars.map((car) => tuneCar(car, method));
}

const seed = option('seed', 7001);
const cars = drawCars(JUDGEMENT_SHAPES, { count: option('cars', 2000), seed });
const ours = runAll(cars, advice);
const score = scoreRuns(ours);
const shapes = [...byShape(ours)];
const commit = execFileSync('git', ['rev-parse', '--short', 'HEAD'], { cwd: root }).toString().trim();
const lines = [
  '# The next-pull advice on practice cars',
  '',
  `Made by \`npm run bench:advice\` with seed ${seed} on ${cars.length} cars of the judgement shapes, at commit ${commit}.`,
  'What the columns mean: `tests/bench/advice/score-runs.ts`. The oracle knows the curve and keeps the step rule.',
  '',
  '## Side by side',
  '',
  ...table('method', [
    ['Pullbook', score],
    ...HAND_METHODS.map(({ name, method }) => [name, scoreRuns(runAll(cars, method))] as const),
  ]),
  '',
  '## Pullbook by shape',
  '',
  ...table(
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
fs.mkdirSync(path.join(root, 'docs/bench'), { recursive: true });
fs.writeFileSync(path.join(root, 'docs/bench/advice.md'), lines.join('\n'));
console.log(lines.join('\n'));
