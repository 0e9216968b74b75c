import fs from 'node:fs';
import path from 'node:path';
import { run } from './run.mjs';

/** Runs npm by the Node that runs us, so that no second Node on the PATH is mixed in. */
export function npm(args, options) {
  const cli = [
    process.env.npm_execpath,
    path.join(path.dirname(process.execPath), '../lib/node_modules/npm/bin/npm-cli.js'),
    path.join(path.dirname(process.execPath), 'node_modules/npm/bin/npm-cli.js'),
  ].find((file) => file?.endsWith('npm-cli.js') && fs.existsSync(file));
  return cli ? run(process.execPath, [cli, ...args], options) : run('npm', args, options);
}
