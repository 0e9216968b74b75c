import { createClient } from '@libsql/client';
import { cpSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { openDatabase } from '../open-database.js';
import { migrate, migrationsFolder } from './migrate.js';

let folder: string;
let url: string;
beforeEach(() => {
  folder = mkdtempSync(path.join(os.tmpdir(), 'pullbook-versions-'));
  url = `file:${path.join(folder, 'book.db')}`;
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

/** The migrations that came before `name`. */
function migrationsBefore(name: string): string {
  const copy = path.join(folder, 'migrations');
  cpSync(migrationsFolder(url), copy, { recursive: true });
  const names = readdirSync(copy).sort();
  const first = names.find((one) => one.endsWith(name)) ?? '';
  for (const one of names.filter((each) => /^\d/.test(each) && each >= first))
    rmSync(path.join(copy, one), { recursive: true });
  return copy;
}

const rows = [
  `INSERT INTO "Workshop" (id, name) VALUES ('w', 'W')`,
  `INSERT INTO "Customer" (id, workshopId, name, searchText) VALUES ('c', 'w', 'C', 'c')`,
  `INSERT INTO "Car" (id, workshopId, customerId, plate, plateKey, searchText, model, mechanics, limits) VALUES ('car', 'w', 'c', 'P', 'P', 'p', 'M', '{}', '{}')`,
  `INSERT INTO "Visit" (id, workshopId, number, carId, stage) VALUES ('v', 'w', 1, 'car', 'on-test')`,
  `INSERT INTO "TuningSession" (id, workshopId, visitId, number, placeKind, place, driver, passenger, air) VALUES ('s', 'w', 'v', 1, 'dyno', 'cell', 'd', 'p', '{}')`,
  `INSERT INTO "Preset" (id, workshopId, carId, slot) VALUES ('p', 'w', 'car', 1)`,
  `INSERT INTO "Log" (id, workshopId, tuningSessionId, fileName, byteCount, sha256, analysis, traces, analysisVersion, recordedBy) VALUES ('l', 'w', 's', 'a.csv', 7, 'ff', '{"pulls":[1.25]}', '[]', 'log-1', 'Somebody')`,
  `INSERT INTO "Pull" (id, workshopId, visitId, tuningSessionId, presetId, presetRevision, number, dutyPct, peakKpa, source, logId, logPullIndex, reasons, warnings, recordedBy) VALUES ('u', 'w', 'v', 's', 'p', 1, 1, 10, 90, 'log', 'l', 0, '[]', '[]', 'Somebody')`,
];

test('what was computed from logs before they had versions becomes the first version, with its pulls', async () => {
  await migrate(url, migrationsBefore('_logs_in_versions'));
  const old = createClient({ url });
  for (const row of rows) await old.execute(row);
  old.close();
  const { client, close } = await openDatabase({ url });
  const log = await client.log.findUniqueOrThrow({
    where: { id: 'l' },
    include: { versions: true, pulls: true },
  });
  expect(log).toMatchObject({
    fileName: 'a.csv',
    version: 1,
    versions: [
      { number: 1, codeVersion: 'log-1', analysis: { pulls: [1.25] }, madeBy: 'Somebody', options: {} },
    ],
    pulls: [{ id: 'u', logVersion: 1, logPullIndex: 0 }],
  });
  await close();
});
