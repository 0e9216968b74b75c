/**
 * Runs the outside checks and writes docs/outside-checks.md from what they declare of themselves.
 * With --check it writes nothing and fails where the file is out of date.
 */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { format, resolveConfig } from 'prettier';

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../..');
const target = path.join(root, 'docs/outside-checks.md');
const vitest = path.join(root, 'node_modules/vitest/vitest.mjs');

function runChecks() {
  const folder = mkdtempSync(path.join(tmpdir(), 'outside-checks-'));
  const report = path.join(folder, 'report.json');
  try {
    execFileSync(
      process.execPath,
      [vitest, 'run', 'tests/outside', '--reporter=json', `--outputFile=${report}`],
      {
        cwd: root,
        stdio: ['ignore', 'inherit', 'inherit'],
      },
    );
    const files = JSON.parse(readFileSync(report, 'utf8')).testResults;
    return files.flatMap((file) => file.assertionResults).flatMap((test) => test.meta?.outsideCheck ?? []);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function refuseDuplicates(checks) {
  const seen = new Set();
  for (const { id } of checks) {
    if (seen.has(id)) throw new Error(`two outside checks are called ${id}`);
    seen.add(id);
  }
}

function cell(text) {
  return text.replaceAll('|', '\\|');
}

function toPage(checks) {
  const sorted = [...checks].sort((a, b) => (a.id < b.id ? -1 : 1));
  const origins = new Map();
  for (const { origin } of sorted) origins.set(origin, (origins.get(origin) ?? 0) + 1);
  const counts = [...origins].sort(([, a], [, b]) => b - a).map(([origin, count]) => `${count} ${origin}`);
  return [
    '# Outside checks',
    '',
    'Made by `npm run docs:checks` from a run in which every one of them passed; do not edit by hand.',
    '',
    `${sorted.length} checks: ${counts.join(', ')}.`,
    '',
    "'Recomputed': the formula or data are the source's, the figures were recomputed with SciPy, mpmath or exact fractions. 'From memory': formula or figure could not be looked up in its source.",
    '',
    '| check | what | source | figures |',
    '| --- | --- | --- | --- |',
    ...sorted.map(
      ({ id, checks: what, source, origin }) => `| ${id} | ${cell(what)} | ${cell(source)} | ${origin} |`,
    ),
    '',
  ].join('\n');
}

const checks = runChecks();
refuseDuplicates(checks);
const page = await format(toPage(checks), { ...(await resolveConfig(target)), parser: 'markdown' });
if (process.argv.includes('--check')) {
  if (readFileSync(target, 'utf8') !== page) {
    console.error('docs/outside-checks.md is out of date: run npm run docs:checks');
    process.exit(1);
  }
} else {
  writeFileSync(target, page);
}
console.log(`${checks.length} outside checks`);
