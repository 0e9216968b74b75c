import type { Client, Config, Transaction } from '@libsql/client';
import { PrismaLibSql } from '@prisma/adapter-libsql';
import type { SqlDriverAdapter } from '@prisma/driver-adapter-utils';

/**
 * What every connection must be told: all but journal_mode are forgotten when a connection closes.
 * synchronous=FULL: an acknowledged write survives a power cut; busy_timeout: another process may hold the file.
 */
const pragmas = [
  'PRAGMA busy_timeout = 10000',
  'PRAGMA journal_mode = WAL',
  'PRAGMA synchronous = FULL',
  'PRAGMA foreign_keys = ON',
].join(';');

/**
 * Prisma's libsql adapter, kept on one connection for good. The driver would open a second connection for every
 * interactive transaction and forget the settings above; the adapter holds a lock for the length of a transaction,
 * so that nothing else can slip in on the one connection.
 */
export class SqliteAdapter extends PrismaLibSql {
  constructor(url: string) {
    super({ url, intMode: 'bigint' });
  }

  override async connect(): Promise<SqlDriverAdapter> {
    const adapter = await super.connect();
    await adapter.executeScript(pragmas);
    return adapter;
  }

  override createClient(config: Config): Client {
    const client = super.createClient(config);
    client.transaction = () => beginOn(client);
    return client;
  }
}

/** IMMEDIATE, because a deferred transaction that turns to writing late can fail where waiting would have done. */
async function beginOn(client: Client): Promise<Transaction> {
  await client.execute('BEGIN IMMEDIATE');
  let closed = false;
  const end = async (statement: 'COMMIT' | 'ROLLBACK'): Promise<void> => {
    if (closed) return;
    await client.execute(statement);
    closed = true;
  };
  return {
    execute: (statement) => client.execute(statement),
    batch: (statements) => client.batch(statements),
    executeMultiple: (script) => client.executeMultiple(script),
    commit: () => end('COMMIT'),
    rollback: () => end('ROLLBACK'),
    close: () => void end('ROLLBACK'),
    get closed() {
      return closed;
    },
  };
}
