import type { SchemaEngine } from '@prisma/schema-engine-wasm';
import path from 'node:path';
import { databaseKind } from '../database-kind.js';
import { DatabaseRefusedError } from '../errors.js';
import { readMigrations, schemaFolder, type Migrations } from './read-schema.js';
import { migrationAdapter, noFilters, withSchemaEngine } from './with-schema-engine.js';

/**
 * Brings a database to the newest migration. Applied ones are never run again.
 * @param url address of the database
 * @param folder where the migrations lie; left out: those of this release
 * @returns names of the migrations that were applied now, oldest first
 * @throws DatabaseRefusedError where an applied migration was edited since, one failed half-way, or the database was
 *   made by a newer release
 */
export async function migrate(url: string, folder = migrationsFolder(url)): Promise<string[]> {
  const migrationsList = readMigrations(folder);
  const isFresh = !(await hasHistory(url));
  return withSchemaEngine(url, async (engine) => {
    if (!isFresh) await refuseUnfit(engine, migrationsList);
    const done = await engine.applyMigrations({ migrationsList, filters: noFilters });
    return done.appliedMigrationNames;
  });
}

/** Where this release's migrations lie. */
export function migrationsFolder(url: string): string {
  return path.join(schemaFolder(databaseKind(url)), 'migrations');
}

/** The engine cannot tell a database without history from a broken one on SQLite, so the table is looked for first. */
async function hasHistory(url: string): Promise<boolean> {
  const adapter = await migrationAdapter(url).connect();
  const sql =
    databaseKind(url) === 'sqlite'
      ? "SELECT name FROM sqlite_master WHERE name = '_prisma_migrations'"
      : "SELECT table_name::text FROM information_schema.tables WHERE table_name = '_prisma_migrations'";
  try {
    return (await adapter.queryRaw({ sql, args: [], argTypes: [] })).rows.length > 0;
  } finally {
    await adapter.dispose();
  }
}

async function refuseUnfit(engine: SchemaEngine, migrationsList: Migrations): Promise<void> {
  const found = await engine.diagnoseMigrationHistory({
    migrationsList,
    optInToShadowDatabase: false,
    filters: noFilters,
  });
  refuseEdited(found.editedMigrationNames);
  refuseFailed(found.failedMigrationNames);
  refuseNewer(found.history);
}

function refuseEdited(names: readonly string[]): void {
  if (names.length === 0) return;
  const message = `these migrations were changed after they had been applied: ${names.join(', ')}`;
  throw new DatabaseRefusedError('edited-migration', message);
}

function refuseFailed(names: readonly string[]): void {
  if (names.length === 0) return;
  const message = `these migrations broke off half-way: ${names.join(', ')}; put the last backup in place`;
  throw new DatabaseRefusedError('failed-migration', message);
}

function refuseNewer(history: { diagnostic: string } | null | undefined): void {
  if (!history || history.diagnostic === 'databaseIsBehind') return;
  const message = 'the database holds migrations that this release does not know: it was made by a newer one';
  throw new DatabaseRefusedError('newer-database', message);
}
