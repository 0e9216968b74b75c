import fs from 'node:fs';
import path from 'node:path';
import { isNodeIn } from './is-node-in.mjs';
import { root } from './root.mjs';

/** Refuses a Node that the product does not run on, by name, before anything is installed. */
export function checkNode() {
  const { engines } = JSON.parse(fs.readFileSync(path.join(root, 'package.json'), 'utf8'));
  if (isNodeIn(engines.node, process.versions.node)) return;
  const lines = engines.node
    .replaceAll('^', '')
    .replaceAll(' || ', ', ')
    .replace(/, ([^,]*)$/, ' or $1');
  console.error(
    `Pullbook runs on Node ${lines} (or a later one of these lines); this is ${process.versions.node}.`,
  );
  process.exit(1);
}
