import { existsSync, readFileSync, readdirSync } from 'node:fs';
import path from 'node:path';
import type { DatabaseKind } from '../database-kind.js';

const prismaFolder = path.resolve(import.meta.dirname, '../../../../prisma');

/** The folder of one kind of database: its provider and its migrations. */
export function schemaFolder(kind: DatabaseKind): string {
  return path.join(prismaFolder, kind === 'sqlite' ? 'sqlite' : 'postgres');
}

export interface SchemaFile {
  readonly path: string;
  readonly content: string;
}

/** The models, which both kinds share, and the provider of one kind, as the schema engine wants them. */
export function readSchema(kind: DatabaseKind): SchemaFile[] {
  return [path.join(prismaFolder, 'models'), schemaFolder(kind)].flatMap((folder) =>
    readdirSync(folder)
      .filter((name) => name.endsWith('.prisma'))
      .sort()
      .map((name) => ({
        path: path.join(folder, name),
        content: readFileSync(path.join(folder, name), 'utf8'),
      })),
  );
}

interface MigrationDirectory {
  path: string;
  migrationFile: { path: string; content: { tag: 'ok'; value: string } };
}

export interface Migrations {
  baseDir: string;
  shadowDbInitScript: string;
  lockfile: { path: string; content: string | null };
  migrationDirectories: MigrationDirectory[];
}

/**
 * The migrations on disk, oldest first, as the schema engine wants them.
 * @param folder holds one folder for each migration with its `migration.sql`
 */
export function readMigrations(folder: string): Migrations {
  const lockFile = path.join(folder, 'migration_lock.toml');
  const names = existsSync(folder)
    ? readdirSync(folder, { withFileTypes: true })
        .filter((entry) => entry.isDirectory())
        .map((entry) => entry.name)
        .sort()
    : [];
  return {
    baseDir: folder,
    shadowDbInitScript: '',
    lockfile: {
      path: 'migration_lock.toml',
      content: existsSync(lockFile) ? readFileSync(lockFile, 'utf8') : null,
    },
    migrationDirectories: names.map((name) => ({
      path: name,
      migrationFile: {
        path: 'migration.sql',
        content: { tag: 'ok', value: readFileSync(path.join(folder, name, 'migration.sql'), 'utf8') },
      },
    })),
  };
}
