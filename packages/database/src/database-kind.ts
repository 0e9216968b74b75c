import { DatabaseRefusedError } from './errors.js';

export type DatabaseKind = 'sqlite' | 'postgresql';

/**
 * Which kind of database an address means.
 * @param url `file:` with a path for SQLite, `postgres://` or `postgresql://` for PostgreSQL.
 * @throws DatabaseRefusedError for any other address
 */
export function databaseKind(url: string): DatabaseKind {
  if (/^file:./.test(url)) return 'sqlite';
  if (/^postgres(ql)?:\/\//.test(url)) return 'postgresql';
  throw new DatabaseRefusedError(
    'unknown-url',
    'the database address must begin with file: or with postgresql://',
  );
}
