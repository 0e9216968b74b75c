import { toolScript } from './tally.mjs';

/** Format, lint, types, arrows, unit and API tests: what every change must pass. */
export async function checks(tally) {
  const node = process.execPath;
  await tally.check('format', node, [toolScript('prettier/bin/prettier.cjs'), '--check', '.']);
  await tally.check('types', node, [toolScript('typescript/bin/tsc'), '-b']);
  await tally.check('types of the dashboard', node, [
    toolScript('typescript/bin/tsc'),
    '--noEmit',
    '-p',
    'apps/web',
  ]);
  await tally.check('lint', node, [toolScript('eslint/bin/eslint.js'), '.', '--max-warnings', '0']);
  await tally.check('arrows', node, [
    toolScript('dependency-cruiser/bin/dependency-cruise.mjs'),
    '--config',
    '.dependency-cruiser.cjs',
    'apps',
    'packages',
    'tests',
  ]);
  await tally.tests('unit, outside checks and API', []);
}
