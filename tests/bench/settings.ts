// npm run bench:settings: gate hold, proof, forecast, drift and hunting on cars and logs whose truth is known.
// Options: --cars N (1000), --seed N the first seed (1), --threads N (2), --write to write docs/bench/settings.md
// also with fewer than 1000 cars. Development uses seeds from 2001 on.
import { execFileSync } from 'node:child_process';
import fs from 'node:fs';
import path from 'node:path';
import { parseArgs } from 'node:util';
import { reportLines } from './settings/report.js';
import { runSeeds } from './settings/run-seeds.js';
import { wholeNumber } from './whole-number.js';

const FEWEST_FOR_THE_PAGE = 1000;
const page = path.resolve(import.meta.dirname, '../../docs/bench/settings.md');

const { values } = parseArgs({
  options: {
    cars: { type: 'string', default: '1000' },
    seed: { type: 'string', default: '1' },
    threads: { type: 'string', default: '2' },
    write: { type: 'boolean', default: false },
  },
});

const count = wholeNumber('cars', values.cars, 1);
const from = wholeNumber('seed', values.seed, 1);
const all = { from, count };
const started = performance.now();
const rows = await runSeeds(
  {
    'gate-hold': all,
    forecast: all,
    hunting: all,
    'proof-own': all,
    'proof-pooled': all,
    'drift-assumed': all,
    'drift-known': all,
  },
  wholeNumber('threads', values.threads, 1),
);
const minutes = ((performance.now() - started) / 60_000).toFixed(1);
const commit = execFileSync('git', ['rev-parse', '--short', 'HEAD'], { encoding: 'utf8' }).trim();
const lines = [
  '# Gate hold, proof, forecast, drift and hunting on simulated cars',
  '',
  `Made by \`npm run bench:settings\` with seeds ${from} to ${from + count - 1}, at commit ${commit}, in ${minutes} minutes on ${values.threads} threads.`,
  'What is drawn, from which ranges and why: `tests/bench/settings`. The methods: [docs/settings.md](../settings.md).',
  '',
  ...reportLines(rows),
  '',
];
console.log(lines.join('\n'));
if (count >= FEWEST_FOR_THE_PAGE || values.write) fs.writeFileSync(page, lines.join('\n'));
