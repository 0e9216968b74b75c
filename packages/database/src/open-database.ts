import { PrismaPg } from '@prisma/adapter-pg';
import { mkdirSync } from 'node:fs';
import path from 'node:path';
import { databaseKind, type DatabaseKind } from './database-kind.js';
import { PrismaClient as PostgresClient } from './generated/postgres/client.js';
import { PrismaClient } from './generated/sqlite/client.js';
import { migrate } from './migrations/migrate.js';
import { SqliteAdapter } from './sqlite/sqlite-adapter.js';

export interface OpenDatabase {
  /** Sees the rows of every workshop: for signing in and starting up; all else goes through `scopeToWorkshop`. */
  readonly client: PrismaClient;
  readonly kind: DatabaseKind;
  readonly close: () => Promise<void>;
}

export interface DatabaseOptions {
  /** `file:` with a path for SQLite, or `postgresql://`. */
  readonly url: string;
  /** Connections to PostgreSQL, default 10; SQLite always has one. */
  readonly connectionCount?: number;
}

/** A transaction waits its turn behind the others; longer than this something is wrong. */
const transactionOptions = { maxWait: 30_000, timeout: 30_000 };

/**
 * Opens the book's database and brings it to the newest migration first.
 * Within a transaction use its own client for every query: on SQLite anything else waits for the transaction's end.
 * @throws DatabaseRefusedError where the database does not fit this release
 */
export async function openDatabase(options: DatabaseOptions): Promise<OpenDatabase> {
  const kind = databaseKind(options.url);
  if (kind === 'sqlite')
    mkdirSync(path.dirname(path.resolve(options.url.slice('file:'.length))), { recursive: true });
  await migrate(options.url);
  const client = kind === 'sqlite' ? openSqlite(options.url) : openPostgres(options);
  await client.$connect();
  return { client, kind, close: () => close(client, kind) };
}

/** Brings what still lies in the write-ahead log into the file: whoever copies the file then copies all of the book. */
async function close(client: PrismaClient, kind: DatabaseKind): Promise<void> {
  if (kind === 'sqlite') await client.$queryRawUnsafe('PRAGMA wal_checkpoint(TRUNCATE)');
  await client.$disconnect();
}

function openSqlite(url: string): PrismaClient {
  return new PrismaClient({ adapter: new SqliteAdapter(url), transactionOptions });
}

/** Typed as the SQLite client, the smaller of the two: so nothing that only PostgreSQL can do gets into a query. */
function openPostgres(options: DatabaseOptions): PrismaClient {
  const adapter = new PrismaPg({ connectionString: options.url, max: options.connectionCount ?? 10 });
  return new PostgresClient({ adapter, transactionOptions }) as unknown as PrismaClient;
}
