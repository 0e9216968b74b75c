// Bundles the workers after `next build`: they are files of their own, and the service worker lists what the build made.
import { build } from 'esbuild';
import { createHash } from 'node:crypto';
import fs from 'node:fs';
import path from 'node:path';

const web = path.resolve(import.meta.dirname, '..');
const shared = {
  bundle: true,
  minify: true,
  format: 'iife',
  target: 'es2022',
  absWorkingDir: web,
  legalComments: 'none',
};

await build({
  ...shared,
  entryPoints: ['offline/worker/advice-worker.ts'],
  outfile: 'public/advice-worker.js',
});
await build({
  ...shared,
  entryPoints: ['practice/worker/practice-worker.ts'],
  outfile: 'public/practice-worker.js',
});
const { blankId, keptDocuments, withoutNetwork } = await importKeptDocuments();
const buildId = fs.readFileSync(path.join(web, '.next/BUILD_ID'), 'utf8').trim();
const hashOf = (file) => createHash('sha256').update(fs.readFileSync(file)).digest('hex').slice(0, 20);

/** Names under /_next/static tell their content, but for those below the build's own name. */
const built = fs
  .readdirSync(path.join(web, '.next/static'), { recursive: true, withFileTypes: true })
  .filter((entry) => entry.isFile() && /[.](js|css|woff2|svg)$/.test(entry.name))
  .map((entry) => path.relative(path.join(web, '.next/static'), path.join(entry.parentPath, entry.name)))
  .map((name) => ({ url: `/_next/static/${name.split(path.sep).join('/')}`, revision: null }));
const own = fs
  .readdirSync(path.join(web, 'public'), { recursive: true, withFileTypes: true })
  .filter((entry) => entry.isFile() && entry.name !== 'service-worker.js')
  .map((entry) => path.join(entry.parentPath, entry.name))
  .map((file) => ({
    url: `/${path.relative(path.join(web, 'public'), file).split(path.sep).join('/')}`,
    revision: hashOf(file),
  }));
const documents = [...keptDocuments, withoutNetwork].map((url) => ({ url, revision: buildId }));
const shell = [...built, ...own, ...documents];
if (built.length === 0) throw new Error('the build of the dashboard has no files to keep');
if (!keptDocuments.some((url) => url.includes(blankId))) throw new Error('no document of a visit is kept');

await build({
  ...shared,
  entryPoints: ['offline/worker/service-worker.ts'],
  outfile: 'public/service-worker.js',
  define: { SHELL: JSON.stringify(shell), 'process.env.NODE_ENV': '"production"' },
});
console.log(`service worker: keeps ${shell.length} files and documents`);

async function importKeptDocuments() {
  const { outputFiles } = await build({
    ...shared,
    format: 'esm',
    entryPoints: ['offline/worker/kept-documents.ts'],
    write: false,
  });
  const text = Buffer.from(outputFiles[0].contents).toString('base64');
  return import(`data:text/javascript;base64,${text}`);
}
