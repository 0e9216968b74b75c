// npm run bench:advice: the next-pull advice beside what people do by hand, on practice cars.
// Options: --set judgement|development (default judgement), --cars N (2000), --seed N (7001), --threads N (2),
// --methods all|ours (all). With the judgement set and at least 1000 cars it writes docs/bench/advice.md.
import { execFileSync } from 'node:child_process';
import fs from 'node:fs';
import path from 'node:path';
import { parseArgs } from 'node:util';
import { isCarSet } from './advice/car-sets.js';
import { METHODS, OURS } from './advice/methods.js';
import { reportLines } from './advice/report.js';
import { runLots } from './advice/run-lots.js';

const root = path.resolve(import.meta.dirname, '../..');
const FEWEST_FOR_THE_PAGE = 1000;

const { values } = parseArgs({
  options: {
    set: { type: 'string', default: 'judgement' },
    cars: { type: 'string', default: '2000' },
    seed: { type: 'string', default: '7001' },
    threads: { type: 'string', default: '2' },
    methods: { type: 'string', default: 'all' },
  },
});
const { set } = values;
if (!isCarSet(set)) throw new Error(`--set must be judgement or development, not ${set}`);
const [count, seed, threads] = [values.cars, values.seed, values.threads].map(Number);
if (!(count && seed && threads)) throw new Error('--cars, --seed and --threads must be numbers above 0');

const names = values.methods === 'ours' ? [OURS] : [...METHODS.keys()];
const runs = await runLots(
  names.map((method) => ({ set, count, seed, method })),
  threads,
);
const commit = execFileSync('git', ['rev-parse', '--short', 'HEAD'], { cwd: root }).toString().trim();
const lines = [
  '# The next-pull advice on practice cars',
  '',
  `Made by \`npm run bench:advice\` with seed ${seed} on ${runs[0]?.length} cars of the ${set} shapes, at commit ${commit}.`,
  'What the columns mean: `tests/bench/advice/score-runs.ts`. The oracle knows the curve and keeps the step rule.',
  '',
  ...reportLines(names.map((name, index) => ({ name, runs: runs[index] ?? [] }))),
];
console.log(lines.join('\n'));
if (set === 'judgement' && values.methods === 'all' && count >= FEWEST_FOR_THE_PAGE) {
  fs.mkdirSync(path.join(root, 'docs/bench'), { recursive: true });
  fs.writeFileSync(path.join(root, 'docs/bench/advice.md'), lines.join('\n'));
}
