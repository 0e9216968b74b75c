import path from 'node:path';
import { databaseKind } from '../database-kind.js';
import { DatabaseRefusedError } from '../errors.js';
import { isUpToDate, readHistory } from './read-history.js';
import { readMigrations, schemaFolder } from './read-schema.js';

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
  const history = await readHistory(url);
  if (isUpToDate(history, migrationsList)) return [];
  // Loaded only when there is something to do: most starts find everything in place.
  const { noFilters, withSchemaEngine } = await import('./with-schema-engine.js');
  return withSchemaEngine(url, async (engine) => {
    if (history !== null) {
      const asked = { migrationsList, optInToShadowDatabase: false, filters: noFilters };
      refuseUnfit(await engine.diagnoseMigrationHistory(asked));
    }
    const done = await engine.applyMigrations({ migrationsList, filters: noFilters });
    return done.appliedMigrationNames;
  });
}

/** Where this release's migrations lie. */
export function migrationsFolder(url: string): string {
  return path.join(schemaFolder(databaseKind(url)), 'migrations');
}

interface Diagnosis {
  readonly editedMigrationNames: readonly string[];
  readonly failedMigrationNames: readonly string[];
  readonly history: { readonly diagnostic: string } | null;
}

function refuseUnfit(found: Diagnosis): void {
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

function refuseNewer(history: Diagnosis['history']): void {
  if (!history || history.diagnostic === 'databaseIsBehind') return;
  const message = 'the database holds migrations that this release does not know: it was made by a newer one';
  throw new DatabaseRefusedError('newer-database', message);
}
