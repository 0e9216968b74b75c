import { mkdtempSync, rmSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import {
  openDatabase,
  scopeToWorkshop,
  ScopeError,
  type OpenDatabase,
  type WorkshopDatabase,
} from './index.js';

let folder: string;
let database: OpenDatabase;
let ours: WorkshopDatabase;
let theirs: WorkshopDatabase;
let ourId: string;
let theirCustomerId: string;

beforeAll(async () => {
  folder = mkdtempSync(path.join(os.tmpdir(), 'pullbook-scope-'));
  database = await openDatabase({ url: `file:${path.join(folder, 'book.db')}` });
  ourId = (await database.client.workshop.create({ data: { name: 'Ours' } })).id;
  const theirId = (await database.client.workshop.create({ data: { name: 'Theirs' } })).id;
  ours = scopeToWorkshop(database.client, ourId);
  theirs = scopeToWorkshop(database.client, theirId);
  theirCustomerId = (await theirs.customer.create({ data: { name: 'Theirs', searchText: 'theirs' } })).id;
});
afterAll(async () => {
  await database.close();
  rmSync(folder, { recursive: true, force: true });
});

test('a new row is the workshop’s, though nobody said so', async () => {
  const row = await ours.customer.create({ data: { name: 'Ours', searchText: 'ours' } });
  expect(row.workshopId).toBe(ourId);
  await ours.customer.createMany({ data: [{ name: 'Many', searchText: 'many' }] });
  expect((await ours.customer.findFirstOrThrow({ where: { name: 'Many' } })).workshopId).toBe(ourId);
});

test('reading finds no row of another workshop, by whatever question', async () => {
  const where = { id: theirCustomerId };
  expect(await ours.customer.findUnique({ where })).toBeNull();
  expect(await ours.customer.findFirst({ where })).toBeNull();
  expect(await ours.customer.findFirst({ where: { OR: [where, { name: 'Theirs' }] } })).toBeNull();
  expect(await ours.customer.findMany({ where })).toEqual([]);
  expect(await ours.customer.count({ where })).toBe(0);
  expect((await ours.customer.aggregate({ where, _count: true }))._count).toBe(0);
  expect(await ours.customer.groupBy({ by: ['name'], where })).toEqual([]);
  await expect(ours.customer.findUniqueOrThrow({ where })).rejects.toThrow();
  expect((await ours.workshop.findMany()).map((row) => row.name)).toEqual(['Ours']);
});

test('a condition that names the other workshop finds nothing', async () => {
  const row = await theirs.customer.findFirstOrThrow();
  expect(await ours.customer.findMany({ where: { workshopId: row.workshopId } })).toEqual([]);
});

test('writing touches no row of another workshop', async () => {
  const where = { id: theirCustomerId };
  await expect(ours.customer.update({ where, data: { name: 'Taken' } })).rejects.toThrow();
  await expect(ours.customer.delete({ where })).rejects.toThrow();
  expect((await ours.customer.updateMany({ where, data: { name: 'Taken' } })).count).toBe(0);
  expect((await ours.customer.deleteMany({ where })).count).toBe(0);
  expect((await theirs.customer.findUniqueOrThrow({ where })).name).toBe('Theirs');
});

test('the scope holds inside a transaction', async () => {
  const inside = await ours.$transaction(async (tx) => {
    const made = await tx.customer.create({ data: { name: 'In tx', searchText: 'intx' } });
    return { made, foreign: await tx.customer.findUnique({ where: { id: theirCustomerId } }) };
  });
  expect(inside.made.workshopId).toBe(ourId);
  expect(inside.foreign).toBeNull();
});

test('ways around the scope are refused', async () => {
  const stranger = { name: 'X', searchText: 'x', workshopId: 'somebody-else' };
  await expect(ours.customer.create({ data: stranger })).rejects.toThrow(ScopeError);
  await expect(ours.workshop.create({ data: { name: 'Second' } })).rejects.toThrow(ScopeError);
  await expect(
    ours.customer.create({ data: { name: 'X', searchText: 'x', workshop: { create: { name: 'Second' } } } }),
  ).rejects.toThrow(ScopeError);
  const raw = ours as unknown as OpenDatabase['client'];
  await expect(raw.$queryRawUnsafe('SELECT 1')).rejects.toThrow(ScopeError);
  expect(() => scopeToWorkshop(database.client, '')).toThrow(ScopeError);
});
