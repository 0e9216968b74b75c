import { createHash } from 'node:crypto';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { gunzipSync, gzipSync } from 'node:zlib';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { openObjectStore } from './object-store.js';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(path.join(os.tmpdir(), 'pullbook-objects-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const bytes = Buffer.from('time,boost\n'.repeat(1000));
const files = () =>
  readdirSync(folder, { recursive: true })
    .map(String)
    .filter((name) => name.includes('.'));

test('put keeps the very bytes under their SHA-256, compressed', async () => {
  const store = openObjectStore(folder);
  const { sha256, byteCount } = await store.put(bytes);
  expect(sha256).toBe(createHash('sha256').update(bytes).digest('hex'));
  expect(byteCount).toBe(bytes.length);
  expect(await store.get(sha256)).toEqual(bytes);
  const [file] = files();
  const stored = readFileSync(path.join(folder, file ?? ''));
  expect(stored.length).toBeLessThan(bytes.length / 10);
  expect(gunzipSync(stored)).toEqual(bytes);
});

test('put keeps the same bytes once, and leaves no part of a file, though many put them at once', async () => {
  const store = openObjectStore(folder);
  await Promise.all(Array.from({ length: 5 }, () => store.put(bytes)));
  expect(files()).toHaveLength(1);
});

test('get refuses what is damaged, missing, or no hash', async () => {
  const store = openObjectStore(folder);
  const { sha256 } = await store.put(bytes);
  writeFileSync(path.join(folder, files()[0] ?? ''), gzipSync('other bytes'));
  await expect(store.get(sha256)).rejects.toThrow('damaged');
  await expect(store.get('0'.repeat(64))).rejects.toThrow();
  await expect(store.get('../../etc/passwd')).rejects.toThrow('not a SHA-256');
});
