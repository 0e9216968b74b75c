import fs from 'node:fs';
import path from 'node:path';
import { npm } from './npm.mjs';
import { root } from './root.mjs';
import { run } from './run.mjs';
import { hashOf, hasStamp, writeStamp } from './stamp.mjs';

const sources = ['package-lock.json', 'tsconfig.base.json', 'apps/api', 'apps/web', 'packages', 'prisma'];
const made = ['apps/api/dist/main.js', 'apps/web/.next/BUILD_ID', 'apps/web/public/service-worker.js'];

async function step(name, work) {
  const started = performance.now();
  const { code, output } = await work();
  if (code !== 0) {
    console.error(output);
    console.error(`${name} failed; see above.`);
    process.exit(code);
  }
  console.log(`${name}: ${((performance.now() - started) / 1000).toFixed(1)} s`);
}

/** Generates the database clients, compiles the server and builds the dashboard, unless nothing has changed since. */
export async function build() {
  // What a development server left behind would be type-checked with the rest, by rules that are not its own.
  fs.rmSync(path.join(root, 'apps/web/.next/dev'), { recursive: true, force: true });
  const value = hashOf(sources);
  if (hasStamp('build', value) && made.every((file) => fs.existsSync(path.join(root, file)))) return;
  const quiet = { quiet: true };
  await step('Database clients', () =>
    run(process.execPath, ['packages/database/tools/generate.mjs'], quiet),
  );
  await step('Server', () =>
    run(process.execPath, ['node_modules/typescript/bin/tsc', '-b', 'apps/api'], quiet),
  );
  await step('Dashboard', () => npm(['run', 'build', '-w', '@pullbook/web'], quiet));
  writeStamp('build', hashOf(sources));
}
