import type { SqlMigrationAwareDriverAdapterFactory } from '@prisma/driver-adapter-utils';
import { databaseKind } from '../database-kind.js';
import { postgresMigrationAdapter } from '../postgres/migration-adapter.js';
import { SqliteAdapter } from '../sqlite/sqlite-adapter.js';

/** A driver adapter of the right kind for the schema engine. */
export function migrationAdapter(url: string): SqlMigrationAwareDriverAdapterFactory {
  return databaseKind(url) === 'sqlite' ? new SqliteAdapter(url) : postgresMigrationAdapter(url);
}
