import fs from 'node:fs';
import path from 'node:path';
import { npm } from './npm.mjs';
import { root } from './root.mjs';
import { hashOf, hasStamp, writeStamp } from './stamp.mjs';

/** Installs the dependencies by the lock file, unless that has been done for this very lock file. */
export async function install() {
  const value = hashOf(['package-lock.json']);
  if (hasStamp('install', value) && fs.existsSync(path.join(root, 'node_modules/.package-lock.json'))) return;
  console.log('Installing dependencies (once) ...');
  const { code, output } = await npm(['ci', '--no-audit', '--no-fund'], { quiet: true });
  if (code !== 0) {
    console.error(output);
    console.error('npm ci failed; see above.');
    process.exit(code);
  }
  writeStamp('install', value);
}
