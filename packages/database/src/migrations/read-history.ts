import { createHash } from 'node:crypto';
import { databaseKind } from '../database-kind.js';
import { migrationAdapter } from './migration-adapter.js';
import type { Migrations } from './read-schema.js';

/** What a database says of the migrations that were run on it; null where none ever was. */
export type History = readonly AppliedMigration[] | null;

interface AppliedMigration {
  readonly name: string;
  readonly checksum: string;
  readonly isWhole: boolean;
}

/** Reads the history that Prisma's schema engine keeps, without the engine: it takes the better part of a second to load. */
export async function readHistory(url: string): Promise<History> {
  const adapter = await migrationAdapter(url).connect();
  const ask = async (sql: string): Promise<unknown[][]> =>
    (await adapter.queryRaw({ sql, args: [], argTypes: [] })).rows;
  const isSqlite = databaseKind(url) === 'sqlite';
  try {
    const tables = isSqlite
      ? "SELECT name FROM sqlite_master WHERE name = '_prisma_migrations'"
      : "SELECT table_name::text FROM information_schema.tables WHERE table_name = '_prisma_migrations' AND table_schema = current_schema()";
    if ((await ask(tables)).length === 0) return null;
    const isWhole = 'CASE WHEN finished_at IS NULL THEN 0 ELSE 1 END';
    const rows = await ask(
      `SELECT migration_name, checksum, ${isWhole} FROM _prisma_migrations WHERE rolled_back_at IS NULL ORDER BY migration_name`,
    );
    return rows.map(([name, checksum, whole]) => ({
      name: String(name),
      checksum: String(checksum),
      isWhole: Number(whole) === 1,
    }));
  } finally {
    await adapter.dispose();
  }
}

/** Whether exactly these migrations have been run, to their end and letter for letter. */
export function isUpToDate(history: History, { migrationDirectories }: Migrations): boolean {
  if (history === null || history.length !== migrationDirectories.length) return false;
  return migrationDirectories.every(({ path, migrationFile }, index) => {
    const applied = history[index];
    const checksum = createHash('sha256').update(migrationFile.content.value).digest('hex');
    return applied?.name === path && applied.isWhole && applied.checksum === checksum;
  });
}
