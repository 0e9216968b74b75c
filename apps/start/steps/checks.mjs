import { toolScript } from './tally.mjs';

/** Format, lint, types, arrows, unit and API tests: what every change must pass. */
export async function checks(tally) {
  const tool = (name, script, ...args) => tally.check(name, process.execPath, [toolScript(script), ...args]);
  const tsc = 'typescript/bin/tsc';
  const arrows = 'dependency-cruiser/bin/dependency-cruise.mjs';
  // Each of these keeps one core busy: two rows of them, about as long as each other.
  await Promise.all([
    inTurn(
      () => tool('types', tsc, '-b'),
      () => tool('types of the dashboard', tsc, '--noEmit', '-p', 'apps/web'),
      () => tool('lint', 'eslint/bin/eslint.js', '.', '--max-warnings', '0'),
    ),
    inTurn(
      () => tool('format', 'prettier/bin/prettier.cjs', '--check', '.'),
      () => tool('arrows', arrows, '--config', '.dependency-cruiser.cjs', 'apps', 'packages', 'tests'),
    ),
  ]);
  await tally.tests('unit, outside checks and API', []);
}

async function inTurn(...works) {
  for (const work of works) await work();
}
