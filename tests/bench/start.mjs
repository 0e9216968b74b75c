// npm run bench:start: a fresh clone started twice, with an empty home folder. Writes docs/bench/start.md.
import { execFileSync, spawn } from 'node:child_process';
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';

const root = path.resolve(import.meta.dirname, '../..');
const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'fresh-'));
const clone = path.join(folder, 'pullbook');
const home = path.join(folder, 'home');
const port = 3900 + (process.pid % 90);
fs.mkdirSync(home);
execFileSync('git', ['clone', '--quiet', root, clone]);
const commit = execFileSync('git', ['rev-parse', '--short', 'HEAD'], { cwd: clone }).toString().trim();

async function secondsToHealthy() {
  const started = performance.now();
  const child = spawn('npm', ['start'], {
    cwd: clone,
    env: { PATH: process.env.PATH, HOME: home, PORT: String(port) },
    stdio: ['ignore', 'pipe', 'inherit'],
    detached: true,
  });
  const ended = new Promise((resolve) => child.once('exit', resolve));
  try {
    for (;;) {
      if (child.exitCode !== null) throw new Error('npm start ended before it was healthy');
      const answer = await fetch(`http://127.0.0.1:${port}/api/v1/health`).catch(() => null);
      const page = answer?.ok ? await fetch(`http://127.0.0.1:${port}/`).catch(() => null) : null;
      if (page?.ok) return (performance.now() - started) / 1000;
      await new Promise((resolve) => setTimeout(resolve, 100));
    }
  } finally {
    process.kill(-child.pid, 'SIGTERM');
    await ended;
  }
}

const first = await secondsToHealthy();
const second = await secondsToHealthy();
fs.rmSync(folder, { recursive: true, force: true });

const lines = [
  '# Start of a fresh clone',
  '',
  `Made by \`npm run bench:start\` at commit ${commit}, Node ${process.versions.node}, ${os.availableParallelism()} cores. Time from the command to a healthy server that has served its first page; empty home folder, dependencies from the registry.`,
  '',
  '| start | seconds | must be under |',
  '| --- | --- | --- |',
  `| first | ${first.toFixed(1)} | 240 |`,
  `| second | ${second.toFixed(1)} | 8 |`,
  '',
];
fs.mkdirSync(path.join(root, 'docs/bench'), { recursive: true });
fs.writeFileSync(path.join(root, 'docs/bench/start.md'), lines.join('\n'));
console.log(lines.slice(4).join('\n'));
process.exit(first < 240 && second < 8 ? 0 : 1);
