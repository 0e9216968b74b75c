import fs from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { isNodeIn } from './is-node-in.mjs';
import { root } from './root.mjs';

const read = (file) => fs.readFileSync(path.join(root, file), 'utf8');
const { node } = JSON.parse(read('package.json')).engines;

test.each(['20.19.0', '20.20.1', '22.13.0', '22.23.3', '24.0.0', '24.21.0'])(
  'Node %s is let through',
  (one) => {
    expect(isNodeIn(node, one)).toBe(true);
  },
);

test.each(['18.20.8', '20.18.3', '21.7.3', '22.12.0', '23.11.1', '25.0.0', '26.1.0'])(
  'Node %s is refused',
  (one) => {
    expect(isNodeIn(node, one)).toBe(false);
  },
);

test('a range that is not understood is refused instead of letting everything through', () => {
  expect(() => isNodeIn('>=20.19 <25', '22.13.0')).toThrow('not understood');
});

test('README names the same lines of Node', () => {
  const lines = node.replaceAll('^', '').split(' || ');
  expect(read('README.md')).toContain(`Node ${lines.slice(0, -1).join(', ')} or ${lines.at(-1)}`);
});
