import { execFileSync } from 'node:child_process';
import { cpSync, existsSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { DatabaseRefusedError, migrate, openDatabase, type OpenDatabase } from './index.js';
import { schemaDrift } from './migrations/schema-drift.js';
import { migrationsFolder } from './migrations/migrate.js';

let folder: string;
let url: string;
const opened: OpenDatabase[] = [];

beforeEach(() => {
  folder = mkdtempSync(path.join(os.tmpdir(), 'pullbook-database-'));
  url = `file:${path.join(folder, 'book.db')}`;
});
afterEach(async () => {
  for (const database of opened.splice(0)) await database.close();
  rmSync(folder, { recursive: true, force: true });
});

async function open(): Promise<OpenDatabase> {
  const database = await openDatabase({ url });
  opened.push(database);
  return database;
}

type Asker = Pick<OpenDatabase['client'], '$queryRawUnsafe'>;
async function pragmas(client: Asker): Promise<Record<string, unknown>> {
  const found: Record<string, unknown> = {};
  for (const name of ['journal_mode', 'synchronous', 'foreign_keys', 'busy_timeout']) {
    const rows = await client.$queryRawUnsafe<Record<string, unknown>[]>(`PRAGMA ${name}`);
    const value = Object.values(rows[0] ?? {})[0];
    found[name] = typeof value === 'bigint' ? Number(value) : value;
  }
  return found;
}
const wanted = { journal_mode: 'wal', synchronous: 2, foreign_keys: 1, busy_timeout: 10_000 };

test('every connection writes ahead, syncs fully, holds foreign keys and waits for a lock', async () => {
  const { client } = await open();
  expect(await pragmas(client)).toEqual(wanted);
});

test('the settings hold inside interactive transactions, in several at a time, and after them', async () => {
  const { client } = await open();
  const inside = await Promise.all([1, 2, 3].map(() => client.$transaction((tx) => pragmas(tx))));
  expect(inside).toEqual([wanted, wanted, wanted]);
  await expect(client.$transaction(() => Promise.reject(new Error('undone')))).rejects.toThrow('undone');
  expect(await pragmas(client)).toEqual(wanted);
});

test('a transaction that fails leaves nothing, and a write that came in meanwhile stays', async () => {
  const { client } = await open();
  let outside: Promise<unknown> = Promise.resolve();
  const failing = client.$transaction(async (tx) => {
    await tx.workshop.create({ data: { name: 'undone' } });
    outside = client.workshop.create({ data: { name: 'stays' } }).then((row) => row);
    throw new Error('undone');
  });
  await expect(failing).rejects.toThrow('undone');
  await outside;
  expect((await client.workshop.findMany()).map((row) => row.name)).toEqual(['stays']);
});

test('a row without a workshop is refused by the foreign key', async () => {
  const { client } = await open();
  await expect(client.customer.create({ data: { name: 'Nobody', searchText: 'nobody' } })).rejects.toThrow(
    /foreign key/i,
  );
});

test('what was written is there after closing and opening again', async () => {
  const first = await openDatabase({ url });
  const row = await first.client.workshop.create({ data: { name: 'Kept' } });
  await first.close();
  const { client, kind } = await open();
  expect(kind).toBe('sqlite');
  expect((await client.workshop.findUniqueOrThrow({ where: { id: row.id } })).name).toBe('Kept');
});

test('ids are UUIDs of version 7', async () => {
  const { client } = await open();
  const { id } = await client.workshop.create({ data: { name: 'W' } });
  expect(id).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
});

test.skipIf(!existsSync('/usr/bin/sqlite3'))('the file opens in the stock sqlite3 and is sound', async () => {
  const { client } = await open();
  await client.workshop.create({ data: { name: 'Read by others' } });
  const read = execFileSync('/usr/bin/sqlite3', [
    path.join(folder, 'book.db'),
    'SELECT name FROM Workshop; PRAGMA integrity_check;',
  ]);
  expect(read.toString().trim().split('\n')).toEqual(['Read by others', 'ok']);
});

test('after closing, the file alone holds the whole book', async () => {
  const first = await openDatabase({ url });
  await first.client.workshop.create({ data: { name: 'Copied' } });
  await first.close();
  const copy = path.join(folder, 'copy.db');
  cpSync(path.join(folder, 'book.db'), copy);
  url = `file:${copy}`;
  const { client } = await open();
  expect(await client.workshop.count()).toBe(1);
});

test('migrations are applied once', async () => {
  expect((await migrate(url)).length).toBeGreaterThan(0);
  expect(await migrate(url)).toEqual([]);
});

test('the SQLite migrations make exactly what the models say', async () => {
  expect(await schemaDrift('file:scratch')).toBeNull();
});

test('migrate refuses an applied migration that was edited, and names it', async () => {
  const own = path.join(folder, 'migrations');
  cpSync(migrationsFolder(url), own, { recursive: true });
  const [name] = await migrate(url, own);
  writeFileSync(path.join(own, name ?? '', 'migration.sql'), '-- something else', { flag: 'a' });
  const refusal = await migrate(url, own).catch((error: unknown) => error);
  expect(refusal).toBeInstanceOf(DatabaseRefusedError);
  expect(refusal).toMatchObject({
    reason: 'edited-migration',
    message: expect.stringContaining(name ?? '-'),
  });
});

test('migrate refuses a database that a newer release made', async () => {
  const newer = path.join(folder, 'newer');
  cpSync(migrationsFolder(url), newer, { recursive: true });
  mkdirSync(path.join(newer, '29990101000000_later'));
  writeFileSync(
    path.join(newer, '29990101000000_later', 'migration.sql'),
    'CREATE TABLE "Later" ("id" TEXT);',
  );
  await migrate(url, newer);
  await expect(openDatabase({ url })).rejects.toMatchObject({ reason: 'newer-database' });
});

test('migrate refuses to go on after a migration that broke off', async () => {
  const broken = path.join(folder, 'broken');
  cpSync(migrationsFolder(url), broken, { recursive: true });
  mkdirSync(path.join(broken, '29990101000000_broken'));
  writeFileSync(path.join(broken, '29990101000000_broken', 'migration.sql'), 'THIS IS NOT SQL;');
  await expect(migrate(url, broken)).rejects.toThrow(/syntax error/);
  await expect(migrate(url, broken)).rejects.toMatchObject({ reason: 'failed-migration' });
});

test('openDatabase refuses an address that is neither SQLite nor PostgreSQL', async () => {
  await expect(openDatabase({ url: 'http://127.0.0.1/' })).rejects.toMatchObject({ reason: 'unknown-url' });
});
