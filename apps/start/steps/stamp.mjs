import { createHash } from 'node:crypto';
import fs from 'node:fs';
import path from 'node:path';
import { root } from './root.mjs';

const skipped = new Set([
  'node_modules',
  'dist',
  '.next',
  'generated',
  'data',
  'coverage',
  '.cache',
  'models',
]);

/** Hash over the contents of the given files and folders (relative to the top), without what is made from them. */
export function hashOf(entries) {
  const hash = createHash('sha256').update(process.versions.node);
  const visit = (entry, skipping) => {
    const stat = fs.statSync(path.join(root, entry), { throwIfNoEntry: false });
    if (!stat || (skipping && skipped.has(path.basename(entry)) && entry !== 'prisma/models')) return;
    if (
      stat.isFile() &&
      !/\.test\.tsx?$|\.tsbuildinfo$|next-env\.d\.ts$|public\/[\w-]+-worker\.js$/.test(entry)
    ) {
      hash.update(entry).update(fs.readFileSync(path.join(root, entry)));
    }
    if (stat.isDirectory()) {
      for (const name of fs.readdirSync(path.join(root, entry)).sort()) visit(path.join(entry, name), true);
    }
  };
  for (const entry of entries) visit(entry, false);
  return hash.digest('hex');
}

const fileOf = (name) => path.join(root, '.cache', `${name}.stamp`);

export function hasStamp(name, value) {
  return fs.existsSync(fileOf(name)) && fs.readFileSync(fileOf(name), 'utf8') === value;
}

export function writeStamp(name, value) {
  fs.mkdirSync(path.dirname(fileOf(name)), { recursive: true });
  fs.writeFileSync(fileOf(name), value);
}
