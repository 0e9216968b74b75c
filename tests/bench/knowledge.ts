// npm run bench:knowledge: what it would be worth to know more of a car before its first pull.
// Options: --set judgement|development (default judgement), --cars N of the whole set (400), --seed N (7001), --threads N (2).
// With the judgement set and at least 300 cars it writes docs/bench/knowledge.md.
import { execFileSync } from 'node:child_process';
import fs from 'node:fs';
import path from 'node:path';
import { parseArgs } from 'node:util';
import { isCarSet } from './advice/car-sets.js';
import { OURS } from './advice/methods.js';
import { BELIEVERS, type Who } from './knowledge/believers.js';
import { knowledgeLines } from './knowledge/knowledge-lines.js';
import { runBelievers } from './knowledge/run-believers.js';
import { wholeNumber } from './whole-number.js';

const bench = path.resolve(import.meta.dirname, '../../docs/bench');
const FEWEST_FOR_THE_PAGE = 300;

const { values } = parseArgs({
  options: {
    set: { type: 'string', default: 'judgement' },
    cars: { type: 'string', default: '400' },
    seed: { type: 'string', default: '7001' },
    threads: { type: 'string', default: '2' },
  },
});

const { set } = values;
if (!isCarSet(set)) throw new Error(`--set must be judgement or development, not ${set}`);
const count = wholeNumber('cars', values.cars, 1);
const seed = wholeNumber('seed', values.seed, 0);
const threads = wholeNumber('threads', values.threads, 1);

const whos: Who[] = [OURS, ...(Object.keys(BELIEVERS) as (keyof typeof BELIEVERS)[])];
const started = performance.now();
const runs = await runBelievers(whos, { set, count, seed }, threads);
const commit = execFileSync('git', ['rev-parse', '--short', 'HEAD'], { cwd: bench }).toString().trim();
const lines = knowledgeLines(
  whos.map((who, index) => ({ who, runs: runs[index] ?? [] })),
  { set, seed, commit, minutes: (performance.now() - started) / 60_000 },
);
console.log(lines.join('\n'));
if (set === 'judgement' && count >= FEWEST_FOR_THE_PAGE)
  fs.writeFileSync(path.join(bench, 'knowledge.md'), lines.join('\n'));
