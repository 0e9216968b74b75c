import { mkdtempSync, rmSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import pg from 'pg';
import { databaseKind } from '../database-kind.js';

/**
 * Gives `work` the address of an empty database of the same kind and removes that database afterwards.
 * @param url for PostgreSQL a server on which databases may be made; for SQLite only its kind counts
 */
export async function withScratchDatabase<T>(
  url: string,
  work: (scratchUrl: string) => Promise<T>,
): Promise<T> {
  return databaseKind(url) === 'sqlite' ? withScratchFile(work) : withScratchOnServer(url, work);
}

async function withScratchFile<T>(work: (scratchUrl: string) => Promise<T>): Promise<T> {
  const folder = mkdtempSync(path.join(os.tmpdir(), 'pullbook-scratch-'));
  try {
    return await work(`file:${path.join(folder, 'scratch.db')}`);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

async function withScratchOnServer<T>(url: string, work: (scratchUrl: string) => Promise<T>): Promise<T> {
  const name = `scratch_${process.pid}_${process.hrtime.bigint()}`;
  const admin = new pg.Client({ connectionString: url });
  await admin.connect();
  await admin.query(`CREATE DATABASE ${name}`);
  const scratch = new URL(url);
  scratch.pathname = `/${name}`;
  try {
    return await work(scratch.href);
  } finally {
    await admin.query(`DROP DATABASE IF EXISTS ${name} WITH (FORCE)`);
    await admin.end();
  }
}
