// Generates both database clients from the one set of models: offline, and only when something changed.
// Run: node packages/database/tools/generate.mjs [--force]
import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { cpSync, existsSync, mkdirSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';

const root = path.resolve(import.meta.dirname, '../../..');
const require = createRequire(path.join(root, 'package.json'));
const prismaFolder = path.join(root, 'prisma');
const models = path.join(prismaFolder, 'models');
const kinds = ['sqlite', 'postgres'];

const outputOf = (kind) => path.join(root, 'packages/database/src/generated', kind);
const stampOf = (kind) => path.join(outputOf(kind), '.made-from');

/** What the client of one kind of database is made from, as one hash. */
function fingerprint(kind) {
  const hash = createHash('sha256').update(require('prisma/package.json').version);
  for (const folder of [models, path.join(prismaFolder, kind)]) {
    const names = readdirSync(folder).filter(
      (name) => name.endsWith('.prisma') || name === 'prisma.config.ts',
    );
    for (const name of names.sort()) hash.update(name).update(readFileSync(path.join(folder, name)));
  }
  return hash.digest('hex');
}

function isUpToDate(kind) {
  return existsSync(stampOf(kind)) && readFileSync(stampOf(kind), 'utf8') === fingerprint(kind);
}

/** Copies the models next to the provider: a link would come out as a text file in some checkouts. */
function placeModels(kind) {
  const target = path.join(prismaFolder, kind, 'models');
  rmSync(target, { recursive: true, force: true });
  mkdirSync(target, { recursive: true });
  cpSync(models, target, { recursive: true });
}

function runPrisma(kind) {
  const prisma = path.join(path.dirname(require.resolve('prisma/package.json')), 'build/index.js');
  const config = path.join(prismaFolder, kind, 'prisma.config.ts');
  // Generating needs no schema engine, but Prisma looks for one and would try to download it: any file that exists will do.
  const env = {
    ...process.env,
    PRISMA_SCHEMA_ENGINE_BINARY: process.execPath,
    PRISMA_HIDE_UPDATE_MESSAGE: '1',
  };
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [prisma, 'generate', '--no-hints', '--config', config], {
      cwd: root,
      env,
    });
    let said = '';
    child.stdout.on('data', (text) => (said += text));
    child.stderr.on('data', (text) => (said += text));
    child.on('error', reject);
    child.on('close', (code) =>
      code === 0 ? resolve() : reject(new Error(`prisma generate for ${kind} failed (${code}):\n${said}`)),
    );
  });
}

const stale = kinds.filter((kind) => process.argv.includes('--force') || !isUpToDate(kind));
for (const kind of stale) {
  rmSync(stampOf(kind), { force: true });
  placeModels(kind);
}
await Promise.all(stale.map(runPrisma));
for (const kind of stale) writeFileSync(stampOf(kind), fingerprint(kind));
console.log(
  stale.length === 0 ? 'database clients are up to date' : `database clients made: ${stale.join(', ')}`,
);
