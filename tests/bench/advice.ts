// npm run bench:advice: the next-pull advice beside what people do by hand, on practice cars.
// Options: --set judgement|development (default judgement), --cars N (2000), --seed N (7001), --threads N (2),
// --methods all|ours (all), --rows N cars for each row of wrong worlds and of earlier cars (500 with the judgement set, else 0).
// With the judgement set, all methods and at least 1000 cars it writes docs/bench/advice.md and its picture.
import { execFileSync } from 'node:child_process';
import fs from 'node:fs';
import path from 'node:path';
import { parseArgs } from 'node:util';
import { calibrate } from './advice/calibration.js';
import { calibrationPicture } from './advice/calibration-picture.js';
import { isCarSet } from './advice/car-sets.js';
import { KNOWING } from './advice/knowing-method.js';
import { METHODS, OURS } from './advice/methods.js';
import {
  boundLines,
  byShapeLines,
  calibrationLines,
  earlierCarLines,
  sideBySideLines,
  timeLines,
  wrongWorldLines,
} from './advice/report.js';
import type { Lot } from './advice/run-lot.js';
import { runLots } from './advice/run-lots.js';
import { RECORDS } from './advice/siblings.js';
import { timeAlone } from './advice/time-alone.js';
import { WRONG_WORLDS } from './advice/wrong-worlds.js';
import { wholeNumber } from './whole-number.js';

const bench = path.resolve(import.meta.dirname, '../../docs/bench');
const PICTURE = 'advice-calibration.svg';
const FEWEST_FOR_THE_PAGE = 1000;
/** Wrong worlds are judged on other cars than the main table. */
const WORLD_SEED_AHEAD = 500;
const RECORD_SEED_AHEAD = 900;

const { values } = parseArgs({
  options: {
    set: { type: 'string', default: 'judgement' },
    cars: { type: 'string', default: '2000' },
    seed: { type: 'string', default: '7001' },
    threads: { type: 'string', default: '2' },
    methods: { type: 'string', default: 'all' },
    rows: { type: 'string' },
  },
});

const { set } = values;
if (!isCarSet(set)) throw new Error(`--set must be judgement or development, not ${set}`);
const count = wholeNumber('cars', values.cars, 1);
const seed = wholeNumber('seed', values.seed, 0);
const threads = wholeNumber('threads', values.threads, 1);
const perWorld = wholeNumber('rows', values.rows ?? (set === 'judgement' ? '500' : '0'), 0);

const names = values.methods === 'ours' ? [OURS] : [...METHODS.keys()];
const methodLots = names.map((method): Lot => ({ set, count, seed, method, foretell: method === OURS }));
const worlds = perWorld === 0 ? [] : WRONG_WORLDS;
const worldLots = worlds.map(({ conditions }): Lot => {
  return { set, count: perWorld, seed: seed + WORLD_SEED_AHEAD, conditions, method: OURS };
});
const records = perWorld === 0 ? [] : RECORDS;
const recordLots = records.map(([, earlier]): Lot => {
  return { set, count: perWorld, seed: seed + RECORD_SEED_AHEAD, earlier, method: OURS };
});
const knowingLot: Lot = { set, count, seed, method: KNOWING };
const runs = await runLots([...methodLots, ...worldLots, ...recordLots, knowingLot], threads);
const named = [...names, ...worlds.map(({ name }) => name), ...records.map(([name]) => name)].map(
  (name, index) => {
    return { name, runs: runs[index] ?? [] };
  },
);
const ours = named[0]?.runs ?? [];

const writesPage = set === 'judgement' && values.methods === 'all' && count >= FEWEST_FOR_THE_PAGE;
const commit = execFileSync('git', ['rev-parse', '--short', 'HEAD'], { cwd: bench }).toString().trim();
const lines = [
  '# The next-pull advice on practice cars',
  '',
  `Made by \`npm run bench:advice\` with seed ${seed} on ${ours.length} cars of the ${set} shapes, at commit ${commit}.`,
  'What the columns mean: `tests/bench/advice/score-runs.ts`. The oracle knows the curve and keeps the step rule.',
  '',
  ...sideBySideLines(named.slice(0, names.length)),
  ...boundLines(ours, runs.at(-1) ?? []),
  ...byShapeLines(ours),
  ...wrongWorldLines(named.slice(names.length, names.length + worlds.length)),
  ...earlierCarLines(named.slice(names.length + worlds.length)),
  ...calibrationLines(ours, writesPage ? PICTURE : null),
  ...timeLines(ours, threads, timeAlone(ours)),
];
console.log(lines.join('\n'));
if (writesPage) {
  fs.writeFileSync(path.join(bench, 'advice.md'), lines.join('\n'));
  fs.writeFileSync(path.join(bench, PICTURE), calibrationPicture(calibrate(ours)));
}
